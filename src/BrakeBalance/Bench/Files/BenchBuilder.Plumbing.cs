using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench.Files;

/// <content>Plumbing.</content>
internal sealed partial class BenchBuilder
{
    private PlumbingJob? Plumbing(PlumbingDocument document)
    {
        int before = _problems.Count;
        HydraulicOil oil = document.Oil ?? new();
        if (oil.At100Celsius >= oil.At40Celsius)
        {
            Add("plumbing.oil", Invariant.Text($"is not thinner at 100 °C ({oil.At100Celsius.Centistokes:0.#} mm²/s) than "
                + $"at 40 °C ({oil.At40Celsius.Centistokes:0.#} mm²/s)."), "both values from the fluid's data sheet");
        }

        if (_problems.Count > before)
        {
            return null;
        }

        var graph = new PlumbingGraph
        {
            Nodes = [.. document.Parts!],
            ReliefPressure = document.ReliefPressure!.Value,
            Lines = [.. document.Lines!],
        };
        return new PlumbingJob(
            new ReturnFlow
            {
                Plumbing = graph,
                PumpFlow = document.PumpFlow!.Value,
                Oil = oil,
                Temperature = document.OilTemperature!.Value,
            },
            document.Release is { } release ? Release(release, document) : null);
    }

    private static ReleaseJob Release(ReleaseDocument release, PlumbingDocument plumbing) => new(
        new HydraulicBooster
        {
            BoostRatio = 4,
            ReliefPressure = plumbing.ReliefPressure!.Value,
            PumpFlow = plumbing.PumpFlow!.Value,
            PowerPistonDiameter = release.PowerPiston!.Value,
            ReturnSpringForce = release.BoosterSpring!.Value,
        },
        new SingleMasterCylinder
        {
            Bore = release.MasterBore!.Value,
            Stroke = release.RodTravel!.Value,
            ReturnSpringForce = release.MasterSpring ?? Force.FromNewtons(100),
        },
        release.RodTravel.Value,
        release.MakersLimit);
}
