using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>card FILE</c>: a racer's pocket card on one small sheet.</summary>
internal static class CardCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File();
        var paper = Options.Of<string>("--paper", "The sheet: a5 or half-letter", "a5|half-letter", CardPaper.A5.Name);
        paper.AcceptOnlyFromAmong([.. CardPaper.All.Select(sheet => sheet.Name)]);
        var load = Options.Of<string?>("--load-case", "The load case the card is for; the file's first unless said", "NAME");
        var pdf = Options.Of<bool>("--pdf", "Writes a PDF beside the page");
        Option<string> units = VehicleOptions.Units();
        Option<string[]> set = VehicleOptions.Set();
        Option<string> output = Options.Folder("out/card");
        Option<bool> force = OutputFiles.Force();
        var command = new Command("card",
            "Write a pocket card: turns, knee, pressures, first locks, pedal, and the recommended setting.") { file, paper, load, pdf,
            units, set, output, force };
        command.SetAction(async (parsed, _) =>
        {
            List<string> problems = [];
            string? path = parsed.GetValue(file);
            VehicleReading? reading = VehicleOptions.ReadNamed(terminal, path, parsed.GetRequiredValue(set), problems);

            CardPaper sheet = CardPaper.All.First(known => known.Name == parsed.GetRequiredValue(paper));
            UnitSystem shown = VehicleOptions.UnitsOf(parsed, units);
            string name = $"{Path.GetFileNameWithoutExtension(path ?? "")}-card-{sheet.Name}-{Display.Name(shown)}.html";
            string page = new OutputFiles(problems, parsed.GetValue(force))
                .File(Path.Combine(parsed.GetRequiredValue(output), name), "--output");
            LoadCase? asked = parsed.GetValue(load) is { } wanted
                ? reading?.Vehicle.LoadCases.FirstOrDefault(known => string.Equals(known.Name, wanted, StringComparison.OrdinalIgnoreCase))
                : reading?.Vehicle.LoadCases[0];
            if (reading is not null && asked is null)
            {
                problems.Add($"--load-case {parsed.GetValue(load)}: there is no such load case. "
                    + $"Accepted: {reading.Vehicle.LoadCaseNames}.");
            }

            BadInputException.ThrowIfAny(problems, reading);
            string html = PocketCardPage.Html(PocketCard.Of(reading.Vehicle, asked!, shown), sheet);
            AtomicFile.Write(page, html);
            terminal.Output.WriteLine($"{page}: the card. Print it on {sheet.Name}; it is one page.");
            if (!parsed.GetValue(pdf))
            {
                return ExitCode.Success;
            }

            await using Chromium? browser =
                await Chromium.TryStartAsync(reason => terminal.Error.WriteLine(reason + " The page was written; any browser prints it."))
                .ConfigureAwait(false);
            if (browser is null)
            {
                return ExitCode.Failed;
            }

            string pdfFile = Path.ChangeExtension(page, ".pdf");
            AtomicFile.Write(pdfFile, await browser.PrintAsync(html).ConfigureAwait(false));
            terminal.Output.WriteLine(pdfFile);
            return ExitCode.Success;
        });
        return command;
    }
}
