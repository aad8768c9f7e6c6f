using System.Text.RegularExpressions;
using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>One thing has one name in every answer: the other names are refused.</summary>
public class WordingTests
{
    // Keys of files and names of entries may still hold such a word, with a point or a quotation mark beside it.
    private const string Refused =
        @"first to lock|go back to|as set now|as in the file|greatest safe|greatest knee|hold-off|(?<!\.)\bknob\b"
        + @"|\bkept:|\bbroken:|\bpanic\b|just past first lock|out of line|nine chances|nine tenths|nine in ten|break off"
        + @"|\bgive of\b|take-?up\b|part of all|boils dry|ends apart|lost in cuts|telephone|nowhere|leg work|assist lost|assist dead"
        + @"|assist failed|grip used|share of grip|\(es\)|\(s\)"
        + @"|foretell|swallows|get no say|turned down|best setting|put right";

    private static readonly string Data = RepositoryRoot.File("data");

    public static TheoryData<string> Answers =>
    [
        "summary vehicles/coupe-1960s.json", "summary vehicles/track-coupe.json --units us",
            "summary vehicles/rear-engined-sports-car.json",
        "stops vehicles/coupe-1960s.json", "stops vehicles/track-coupe.json", "measure questions vehicles/coupe-1960s.json",
        "measure questions vehicles/track-coupe.json", "measure bands vehicles/coupe-1960s.json", "measure plan vehicles/coupe-1960s.json",
        "measure gauges logs/invented-gauges.csv",
        "measure setting vehicles/coupe-1960s.json --draws 2000 --stops logs/invented-stops.csv --gauges logs/invented-gauges.csv",
    ];

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task An_answer_holds_no_other_name(string command)
    {
        string[] arguments = [.. command.Split(' ')
            .Select(word => word.Contains('/', StringComparison.Ordinal) ? Path.Combine(Data, word) : word)];
        (int code, string output, string error) = await Shell.RunAsync(arguments);
        Assert.True(code == 0, error);
        string text = Regex.Replace(output, @"\s+", " ");
        Assert.Equal([], Regex.Matches(text, $".{{0,40}}({Refused}).{{0,20}}", RegexOptions.IgnoreCase).Select(match => match.Value));
    }
}
