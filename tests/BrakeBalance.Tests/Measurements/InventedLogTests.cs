using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

public class InventedLogTests
{
    private static readonly string Root = FindRoot();
    private static readonly Vehicle Coupe = VehicleFile.Load(Path.Combine(Root, "data/vehicles/coupe-1960s.json")).Vehicle;

    private static string Log(string name) => File.ReadAllText(Path.Combine(Root, "data/logs", name));

    [Fact]
    public void The_committed_logs_are_those_the_command_writes_and_say_that_they_are_invented()
    {
        foreach ((string name, string text) in InventedLogs.Of(Coupe))
        {
            Assert.Equal(text, Log(name));
            Assert.Contains("nvented", text.Split('\n')[0]);
        }
    }

    [Fact]
    public void The_gauges_give_the_knob_of_the_vehicle_file_back()
    {
        LogReading<GaugePair> log = LogReader.ReadGaugePairs(new StringReader(Log("invented-gauges.csv")));
        Assert.Equal(2, log.Problems.Count);
        Assert.True(log.IsInvented);
        GaugeAnalysis analysis = ValveFitting.Analyse(log.Rows);
        Interval<Pressure> perTurn = analysis.Calibration!.KneePerTurn;
        Assert.InRange(10, perTurn.Low.Bars, perTurn.High.Bars);
        Interval<Pressure> at2 = analysis.Calibration.KneeAt(2);
        Assert.InRange(27, at2.Low.Bars - 0.5, at2.High.Bars + 0.5);
        Assert.InRange(0.30, analysis.Slope!.Value.Low - 0.01, analysis.Slope.Value.High + 0.01);
        Assert.DoesNotContain(analysis.Findings, f => f.Kind != GaugeFindingKind.Outliers);
    }

    [Fact]
    public void The_stops_give_the_truth_back_within_their_bounds()
    {
        LogReading<TestStop> log = LogReader.ReadTestStops(new StringReader(Log("invented-stops.csv")));
        Assert.Single(log.Problems);
        CarEstimate estimate = CarEstimation.Estimate(Coupe, log.Rows);
        double[] truth =
        [
            InventedLogs.TrueFrontFriction * Coupe.Brakes.Front.FrictionCoefficient,
                InventedLogs.TrueRearFriction * Coupe.Brakes.Rear.FrictionCoefficient,
            InventedLogs.TrueHeight * Coupe.LoadCases[0].CentreOfGravityHeight.Meters, InventedLogs.TrueDryAdhesion,
                InventedLogs.TrueWetAdhesion,
        ];
        Assert.Equal(5, estimate.Parameters.Count);
        Assert.All(estimate.Parameters.Zip(truth), pair =>
            Assert.InRange(pair.Second, pair.First.Posterior.Low, pair.First.Posterior.High));
    }

    [Fact]
    public void The_phone_gives_the_three_decelerations_back()
    {
        StopSearch search = StopFinder.Find(LogReader.ReadTimeSeries(new StringReader(Log("invented-phone.csv"))).Rows);
        Assert.Equal(3, search.Stops.Count);
        Assert.All(search.Stops.Zip(InventedLogs.TrueDecelerations), pair =>
            Assert.Equal(1, pair.First.Deceleration!.Value / pair.Second, 0.02));
    }

    private static string FindRoot()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
