using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Changes single values in the text of a JSON file and leaves everything else, comments and layout too, as it is.</summary>
internal sealed partial class JsonText
{
    private readonly byte[] _bytes;
    private readonly Dictionary<string, (int Start, int End)> _values = [];
    private readonly Dictionary<string, int> _names = [];
    private readonly List<(int Start, int End, string Text)> _edits = [];

    /// <summary>Finds where each value of a text stands.</summary>
    /// <param name="text">Well-formed JSON; comments and trailing commas may stay.</param>
    public JsonText(string text)
    {
        _bytes = Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(_bytes,
            new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        reader.Read();
        Walk(ref reader, "");
    }

    public bool Has(string path) => _values.ContainsKey(path);

    /// <summary>A value as it is written, quotation marks included; null when it is not there.</summary>
    public string? Written(string path) =>
        _values.TryGetValue(path, out (int Start, int End) at) ? Encoding.UTF8.GetString(_bytes, at.Start, at.End - at.Start) : null;

    /// <summary>Puts a value in place of another, or where none is; nothing happens where a list element would have to be made.</summary>
    /// <param name="path">Path such as <c>loadCases[0].mass</c>.</param>
    /// <param name="json">The value as JSON, with what shall stand behind it.</param>
    /// <param name="keys">The keys that the part of a path may have, in their order; null for any place.</param>
    public bool Set(string path, string json, Func<string, string[]>? keys = null)
    {
        if (_values.TryGetValue(path, out (int Start, int End) at))
        {
            _edits.Add((at.Start, at.End, json));
            return true;
        }

        string[] parts = path.Split('.');
        int there = parts.Length - 1;
        while (there > 0 && !Has(string.Join('.', parts[..there])))
        {
            there--;
        }

        if (parts[there..].Any(part => part.Contains('[', StringComparison.Ordinal))
            || _bytes[_values[string.Join('.', parts[..there])].Start] != '{')
        {
            return false;
        }

        string made = $"\"{parts[^1]}\": {json}";
        foreach (string outer in parts[there..^1].Reverse())
        {
            made = $"\"{outer}\": {{ {made} }}";
        }

        // Behind what stands before it, with its comment, or the opening brace, in the way in which the entries there are laid out.
        string part = string.Join('.', parts[..there]), rest = From(_values[part].Start + 1), lead = Lead().Match(rest).Value;
        string[] order = keys?.Invoke(part) ?? [];
        int inside = _values[part].Start + 1, before = order.Take(Array.IndexOf(order, parts[there]))
            .Select(key => _values.GetValueOrDefault(DocumentReader.Join(part, key)).End).DefaultIfEmpty().Max();
        if (before > 0)
        {
            int comma = After(before), behind = comma < _bytes.Length && _bytes[comma] == ',' ? comma + 1 : before;
            int place = behind + Encoding.UTF8.GetByteCount(Comment().Match(From(behind)).Value);
            _edits.Add((before, before, behind == before ? "," : ""));
            _edits.Add((place, place, (lead.Length > 0 ? lead : " ") + made + (behind == before ? "" : ",")));
            return true;
        }

        bool empty = rest[lead.Length..].StartsWith('}');
        if (empty && _edits.FindIndex(edit => edit.Start == inside && edit.End == inside) is >= 0 and int first)
        {
            _edits[first] = (inside, inside, $"{_edits[first].Text.TrimEnd()}, {made} ");
            return true;
        }

        _edits.Add((inside, inside, (lead.Length > 0 && !empty ? lead : " ") + made + (empty ? " " : ",")));
        return true;
    }

    /// <summary>Takes an entry or a list element out, with its line where nothing else stands there.</summary>
    public void Remove(string path)
    {
        if (!_values.TryGetValue(path, out (int Start, int End) at))
        {
            return;
        }

        int start = _names.GetValueOrDefault(path, at.Start), end = at.End;
        end = After(end) is var comma && comma < _bytes.Length && _bytes[comma] == ',' ? comma + 1 : end;
        int line = start;
        while (line > 0 && _bytes[line - 1] is (byte)' ' or (byte)'\t')
        {
            line--;
        }

        int rest = After(end, lines: false);
        bool alone = line > 0 && _bytes[line - 1] == '\n' && rest < _bytes.Length && _bytes[rest] == '\n';
        _edits.Add(alone ? (line, rest + 1, "") : (start, end, ""));
    }

    /// <summary>Adds an element behind the last one of a list.</summary>
    public void Append(string path, string json)
    {
        int count = 0;
        while (Has(Element(path, count)))
        {
            count++;
        }

        int at = count == 0 ? _values[path].Start + 1 : _values[Element(path, count - 1)].End;
        _edits.Add((at, at, count == 0 ? json : ", " + json));
    }

    public override string ToString()
    {
        using var made = new MemoryStream();
        int at = 0;
        foreach ((int start, int end, string text) in _edits.OrderBy(edit => edit.Start))
        {
            made.Write(_bytes.AsSpan(at, start - at));
            made.Write(Encoding.UTF8.GetBytes(text));
            at = end;
        }

        made.Write(_bytes.AsSpan(at));
        return Encoding.UTF8.GetString(made.ToArray());
    }

    private void Walk(ref Utf8JsonReader reader, string path)
    {
        int start = (int)reader.TokenStartIndex;
        if (reader.TokenType == JsonTokenType.StartObject)
        {
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                string inside = DocumentReader.Join(path, reader.GetString()!);
                _names[inside] = (int)reader.TokenStartIndex;
                reader.Read();
                Walk(ref reader, inside);
            }
        }
        else if (reader.TokenType == JsonTokenType.StartArray)
        {
            for (int i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
            {
                Walk(ref reader, Element(path, i));
            }
        }

        _values[path] = (start, (int)reader.BytesConsumed);
    }

    private static string Element(string path, int index) => Invariant.Text($"{path}[{index}]");

    private int After(int at, bool lines = true)
    {
        while (at < _bytes.Length && (_bytes[at] is (byte)' ' or (byte)'\t' or (byte)'\r' || (lines && _bytes[at] == '\n')))
        {
            at++;
        }

        return at;
    }

    private string From(int at) => Encoding.UTF8.GetString(_bytes, at, _bytes.Length - at);

    [GeneratedRegex(@"^\s*")]
    private static partial Regex Lead();

    [GeneratedRegex(@"^[ \t]*//[^\r\n]*")]
    private static partial Regex Comment();
}
