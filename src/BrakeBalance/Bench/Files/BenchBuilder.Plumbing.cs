using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench.Files;

/// <content>Plumbing.</content>
internal sealed partial class BenchBuilder
{
    private PlumbingJob? Plumbing(PlumbingDocument document)
    {
        int before = _problems.Count;
        ImmutableArray<PlumbingNode> nodes = [.. document.Parts!.Select(Part)];
        var oil = new HydraulicOil();
        oil = document.Oil?.Density is { } density ? oil with { Density = density } : oil;
        oil = document.Oil?.At40Celsius is { } warm ? oil with { At40Celsius = warm } : oil;
        oil = document.Oil?.At100Celsius is { } hot ? oil with { At100Celsius = hot } : oil;
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
            Nodes = nodes,
            ReliefPressure = document.ReliefPressure!.Value,
            Lines = [.. document.Lines!.Select(line => new PlumbingLine
            {
                From = line.From!,
                To = line.To!,
                Bore = line.Bore!.Value,
                Length = line.Length!.Value,
                LossCoefficient = line.LossCoefficient ?? 1.5,
                WorkingPressure = line.WorkingPressure,
            })],
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

    private static PlumbingNode Part(PlumbingPartDocument part) => new()
    {
        Name = part.Name!,
        Part = part.Part!.Value,
        Loss = part.Loss ?? Pressure.Zero,
        LossAt = part.LossAt ?? VolumeFlow.FromLitersPerMinute(8),
    };
}
