using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Tests.Commands;

public sealed class CheckCommandTests : IDisposable
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // The coupe's valve is called a 57 % reduction, and the file has 0.57.
    private string Doubtful() => _folder.Write(
        "car.json",
        File.ReadAllText(Coupe).Replace("\"slope\": 0.30", "\"slope\": 0.57", StringComparison.Ordinal));

    [Fact]
    public async Task Warnings_are_an_answer_with_the_usual_range_and_the_likely_slip()
    {
        string path = Doubtful();
        (int code, string output, string error) = await Shell.RunAsync("check", path);
        Assert.Equal((ExitCode.Success, ""), (code, error));
        string[] lines = output.TrimEnd().Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.StartsWith($"{path}: 1 warning. ", lines[0], StringComparison.Ordinal);
        const string Warning = "warning: hydraulics.rearValves[0].slope: 0.57 is above the usual range. Usual: 0.2 to 0.5.";
        Assert.StartsWith($"{path}: {Warning}", lines[1], StringComparison.Ordinal);
        Assert.Contains("Likely slip: percent reduction given for slope", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_log_with_lock_ups_and_their_decelerations_is_nothing_to_warn_of()
    {
        _folder.Write("stops.csv", "load case;surface;front pressure [bar];lock pressure [bar];deceleration [g];locked first\n"
            + "driver only;dry;25;;0.41;none\ndriver only;dry;;43.5;0.85;front\n");
        string car = _folder.Write("measured.json", File.ReadAllText(Coupe).Replace(
            "\"wheelbase\"", "\"measurements\": { \"stops\": \"stops.csv\" }, \"wheelbase\"", StringComparison.Ordinal));
        (int code, string output, string error) = await Shell.RunAsync("check", car, "--strict");
        Assert.Equal((ExitCode.Success, ""), (code, error));
        Assert.Contains("no problem found", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Strict_refuses_warnings()
    {
        (int code, string output, string error) = await Shell.RunAsync("check", Doubtful(), "--strict");
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Contains("warning: hydraulics.rearValves[0].slope", error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Success, (await Shell.RunAsync("check", Coupe, "--strict")).Code);
    }

    [Theory]
    [InlineData("summary")]
    [InlineData("summary", "--json")]
    [InlineData("measure", "questions")]
    public async Task Other_commands_say_one_line_beside_their_answer(params string[] words)
    {
        string path = Doubtful();
        string[] command = [.. words.Where(word => word[0] != '-'), path, .. words.Where(word => word[0] == '-')];
        (int code, string output, string error) = await Shell.RunAsync(command);
        Assert.Equal((ExitCode.Success, $"{path}: 1 warning; 'balance check' tells more.\n"), (code, error));
        Assert.DoesNotContain("usual range", output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_value_tried_on_the_command_line_is_no_slip_of_the_file()
    {
        string[] tried = ["--set", "hydraulics.rearValves[0].slope=0.57"];
        (int code, _, string error) = await Shell.RunAsync(["summary", Coupe, .. tried]);
        Assert.Equal((ExitCode.Success, ""), (code, error));
        Assert.Contains("1 warning.", (await Shell.RunAsync(["check", Coupe, .. tried])).Output, StringComparison.Ordinal);
    }
}
