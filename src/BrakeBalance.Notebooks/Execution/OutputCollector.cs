using BrakeBalance.Charts.Outputs;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Gathers a cell's outputs in order; text printed in several goes becomes one output.</summary>
internal sealed class OutputCollector
{
    private readonly List<CellOutput> _outputs = [];
    private readonly StringBuilder _printed = new();

    public void Print(string text) => _printed.Append(text);

    /// <summary>Adds a value in its media types.</summary>
    public void Add(IReadOnlyDictionary<string, string> data)
    {
        Flush();
        if (data.Count > 0)
        {
            _outputs.Add(new CellOutput(data));
        }
    }

    /// <summary>Adds what a cell returned, in the media types that suit it; nothing for null.</summary>
    public void Show(object? value) => Add(value switch
    {
        null => [],
        DataFrame frame => new()
        {
            [MediaTypes.Html] = ValueHtml.Of(frame),
            [MediaTypes.Plain] = ValueText.Of(frame),
            [MediaTypes.Csv] = new FrameTable(frame).ToCsv(),
        },
        _ when ValueHtml.Suits(value) => new() { [MediaTypes.Html] = ValueHtml.Of(value), [MediaTypes.Plain] = ValueText.Of(value) },
        _ => new Dictionary<string, string> { [MediaTypes.Plain] = ValueText.Of(value) },
    });

    /// <summary>All outputs so far.</summary>
    public IReadOnlyList<CellOutput> ToList()
    {
        Flush();
        return [.. _outputs];
    }

    private void Flush()
    {
        if (_printed.Length > 0)
        {
            _outputs.Add(new CellOutput(
                new Dictionary<string, string> { [MediaTypes.Plain] = _printed.ToString().ReplaceLineEndings("\n") }));
            _printed.Clear();
        }
    }
}
