using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Tests;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class OwnMeasurementsCommandTests
{
    private static Task<(int Exit, string Out, string Error)> Run(params string[] arguments) => Shell.RunAsync(arguments);

    private static async Task<JsonNode> Json(params string[] arguments)
    {
        (int exit, string text, string error) = await Run([.. arguments, "--json"]);
        Assert.True(exit == 0, error);
        return JsonNode.Parse(text)!;
    }

    [Fact]
    public async Task Every_answer_about_the_setting_is_that_of_the_own_tests()
    {
        using var car = OwnCar.Measured();
        string shown = (string)(await Json("summary", car.File))["setting"]!["recommended"]!["shown"]!;
        JsonNode setting = (await Json("measure", "setting", car.File))["setting"]!;
        Assert.Equal("chance", (string)setting["rule"]!);
        Assert.Equal(shown, (string)setting["recommended"]!["shown"]!);
        JsonNode given = (await Json("measure", "setting", car.File, "--stops", car.At("stops.csv"), "--gauges", car.At("gauges.csv")))[
            "setting"]!;
        Assert.Equal(setting.ToJsonString(), given.ToJsonString());
        Assert.Contains((await Json("measure", "questions", car.File))["questions"]!.AsArray(), question =>
            ((string?)question!["answer"])?.Contains(shown, StringComparison.Ordinal) == true);

        (int exit, _, string error) = await Run("card", car.File, "--output", car.Folder);
        Assert.True(exit == 0, error);
        Assert.Contains(shown, await File.ReadAllTextAsync(Directory.GetFiles(car.Folder, "*card*.html").Single()),
            StringComparison.Ordinal);

        using var without = new OwnCar();
        Assert.Equal("corners", (string)(await Json("summary", without.Named(null, null).File))["setting"]!["rule"]!);
    }

    [Fact]
    public async Task Check_reads_the_logs_and_tells_of_each_line_with_its_file()
    {
        using var car = OwnCar.Measured();
        (int exit, string text, string error) = await Run("check", car.File);
        Assert.True(exit == 0, error);
        Assert.Contains("no problem found", text, StringComparison.Ordinal);
        string stops = await File.ReadAllTextAsync(car.At("stops.csv"));
        await File.WriteAllTextAsync(car.At("stops.csv"), stops + "50;driver only;dry;0;fast;;;0.3;none\n");
        (exit, _, error) = await Run("check", car.File);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("stops.csv: line 22: ", error, StringComparison.Ordinal);
        Assert.Contains("1 of 21 rows cannot be read, more than 2 %", error, StringComparison.Ordinal);

        (exit, _, _) = await Run("summary", car.File);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Equal(0, (await Run("measure", "setting", car.File, "--allow-lost-rows")).Exit);
    }

    [Fact]
    public async Task Check_warns_of_logs_that_do_not_fit_and_no_command_recommends_by_them()
    {
        using var car = OwnCar.Measured(slip: LogSlip.BarUnderPsi);
        (int exit, string text, _) = await Run("check", car.File);
        Assert.Equal(0, exit);
        Assert.Contains("bar under [psi]", text, StringComparison.Ordinal);
        Assert.Equal(ExitCode.BadInput, (await Run("check", car.File, "--strict")).Exit);
        JsonNode setting = (await Json("summary", car.File))["setting"]!;
        Assert.Null(setting["recommended"]);
        Assert.Equal("withheld", (string)setting["reach"]!);
        (exit, _, string error) = await Run("measure", "setting", car.File, "--write", car.At("fitted.json"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("do not fit the car", error, StringComparison.Ordinal);
        Assert.False(File.Exists(car.At("fitted.json")));
    }

    [Fact]
    public async Task The_file_written_passes_check_and_gives_summary_the_fitted_numbers()
    {
        using var car = OwnCar.Measured();
        string source = await File.ReadAllTextAsync(car.File), fitted = car.At("fitted.json");
        (int exit, _, string error) = await Run("measure", "setting", car.File, "--write", fitted, "--date", "2026-05-12");
        Assert.True(exit == 0, error);
        Assert.Equal(source, await File.ReadAllTextAsync(car.File));
        Assert.Contains("2026-05-12", await File.ReadAllTextAsync(fitted), StringComparison.Ordinal);
        (exit, _, error) = await Run("check", fitted);
        Assert.True(exit == 0, error);

        var own = (OwnMeasurements)OwnMeasurements.Attach(VehicleFile.Load(car.File)).Reading!.Vehicle.Measured!;
        string[] overrides =
        [
            "--set", FormattableString.Invariant($"front.brake.friction={own.Estimate!.Parameters[0].Posterior.Estimate}"),
            "--set", FormattableString.Invariant($"rear.brake.friction={own.Estimate.Parameters[1].Posterior.Estimate}"),
            "--set", FormattableString.Invariant(
                $"loadCases[0].centreOfGravityHeight={own.Estimate.CentreOfGravityHeight.Estimate.Meters} m"),
            "--set", FormattableString.Invariant($"hydraulics.rearValves[0].slope={own.Valve!.Slope!.Value.Estimate}"),
        ];
        using var plain = new OwnCar();
        JsonNode asked = (await Json(["summary", plain.Named(null, null).File, .. overrides]))["load_cases"]![0]!;
        JsonNode told = (await Json("summary", fitted))["load_cases"]![0]!;
        double Dry(JsonNode part) => (double)part["adhesions"]![4]!["braking_efficiency"]!;
        Assert.Equal(Dry(asked), Dry(told), 0.01);
        Assert.NotEqual(Dry((await Json("summary", plain.File))["load_cases"]![0]!), Dry(told), 3);

        // It is not written over, nor is the source; only where that is asked for.
        (exit, _, error) = await Run("measure", "setting", car.File, "--write", fitted);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("--force", error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.BadInput, (await Run("measure", "setting", car.File, "--write", car.File)).Exit);
        Assert.Equal(ExitCode.BadInput,
            (await Run("measure", "setting", car.File, "--write", car.At("b.json"), "--set", "rear.brake.friction=0.4")).Exit);
        Assert.Equal(ExitCode.BadInput, (await Run("measure", "setting", car.File, "--write", car.At("b.json"), "--date", "12.5.26")).Exit);
        Assert.Equal(source, await File.ReadAllTextAsync(car.File));
        Assert.Equal(0, (await Run("measure", "setting", car.File, "--write", fitted, "--force")).Exit);
        Assert.DoesNotContain("2026", await File.ReadAllTextAsync(fitted), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Figures_of_measurements_are_made_of_the_own_logs_and_of_nothing_else()
    {
        string[] measured = [.. FigureCatalogue.All.Where(entry => entry.IsMeasured).Select(entry => entry.Name)];
        Assert.Equal(5, measured.Length);
        string[] asked = [.. measured.SelectMany(name => new[] { "--figure", name })];
        using var without = new OwnCar();
        (int exit, _, string error) = await Run(["figures", without.Named(null, null).File, "--output", without.At("out"), .. asked]);
        Assert.Equal(ExitCode.Failed, exit);
        Assert.All(measured, name => Assert.Contains($"{name}: not made; it needs own ", error, StringComparison.Ordinal));
        Assert.Empty(Directory.Exists(without.At("out")) ? Directory.GetFiles(without.At("out")) : []);

        using var car = OwnCar.Measured();
        (exit, _, error) = await Run(["figures", car.File, "--output", car.At("out"), .. asked]);
        Assert.True(exit == 0, error);
        string rates = await File.ReadAllTextAsync(car.At("out/saloon-measured-rates-si.txt"));
        Assert.DoesNotContain("nvented", rates, StringComparison.Ordinal);
        Assert.All(measured, name => Assert.True(File.Exists(car.At($"out/saloon-{name}-si.csv")), name));

        // Logs that are marked as invented are told of, in plain words too, and whatever a car is called it is not invented unless its
        // file says so.
        await File.WriteAllTextAsync(car.At("stops.csv"), $"# {LogReading<TestStop>.InventedMark}\n"
            + await File.ReadAllTextAsync(car.At("stops.csv")));
        (exit, _, error) = await Run("figures", car.File, "--output", car.At("out"), "--figure", "measured-rates", "--plain");
        Assert.True(exit == 0, error);
        Assert.Contains("Invented measurements.", await File.ReadAllTextAsync(car.At("out/saloon-measured-rates-si-plain.txt")),
            StringComparison.Ordinal);
        Vehicle named = OwnCar.Plain with { Name = "Invented once, bought later" };
        Assert.Contains("reader's own vehicle file", FigureText.Car(named), StringComparison.Ordinal);
        Assert.Contains("invented", FigureText.Car(named with { IsInvented = true }), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_vehicle_file_stands_for_the_logs_that_it_names()
    {
        using var car = OwnCar.Measured();
        File.Copy(RepositoryRoot.File("data/logs/invented-phone.csv"), car.At("phone.csv"));
        car.Named(series: "phone.csv");
        foreach ((string kind, string log) in new[] { ("series", "phone.csv"), ("gauges", "gauges.csv") })
        {
            Assert.Equal((await Json("measure", kind, car.At(log))).ToJsonString(), (await Json("measure", kind, car.File)).ToJsonString());
        }

        Assert.Equal(3, (await Json("measure", "setting", car.File, "--draws", "1000"))["series"]!["stops"]!.AsArray().Count);
        Assert.Contains("3 stops were found", (await Run("measure", "setting", car.File, "--draws", "1000")).Out, StringComparison.Ordinal);

        car.Named();
        (int exit, _, string error) = await Run("measure", "series", car.File);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("measurements.series names no log", error, StringComparison.Ordinal);
        Assert.Null((await Json("measure", "setting", car.File, "--draws", "1000"))["series"]);
    }

    [Fact]
    public async Task Gauges_behind_a_balance_bar_are_judged_by_the_car_s_own_bores()
    {
        using var folder = new TemporaryFolder();
        string track = await File.ReadAllTextAsync(RepositoryRoot.File("data/vehicles/track-coupe.json"));
        string file = folder.Write("track.json", track.Replace("\"wheelbase\"",
            "\"measurements\": { \"gauges\": \"gauges.csv\" },\n  \"wheelbase\"", StringComparison.Ordinal));
        double ratio = VehicleFile.Load(file).Vehicle.Hydraulics.Split.RearToFrontPressureRatio;
        Assert.InRange(Math.Abs(ratio - 1), 0.02, 1);
        folder.Write("gauges.csv", "front pressure [bar];rear pressure [bar]\n" + string.Concat(Enumerable.Range(1, 15)
            .Select(i => FormattableString.Invariant($"{4 * i};{4 * i * ratio:0.0}\n"))));
        string given = ratio.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal((await Json("measure", "gauges", folder.File("gauges.csv"), "--below-knee", given)).ToJsonString(),
            (await Json("measure", "gauges", file)).ToJsonString());
    }
}
