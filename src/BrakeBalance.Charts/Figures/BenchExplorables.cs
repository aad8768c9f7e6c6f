using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Charts.Figures;

/// <summary>Explorables of the bench.</summary>
public static class BenchExplorables
{
    private static readonly double[] BoreMillimetres = [5, 6.5, 8, 9.5, 12.7];

    /// <summary>What bore, oil temperature and layout of the return do to the pedal.</summary>
    /// <param name="flow">Pump flow and oil; the plumbing and the temperature come from the controls.</param>
    /// <param name="job">Booster, master cylinder and travel.</param>
    /// <param name="length">Length of the way back to the reservoir; above zero, to 20 m.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    public static Explorable Return(ReturnFlow flow, ReleaseJob job, Length length, UnitSystem? units = null, string id = "explore-return")
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(job);
        UnitSystem system = units ?? Display.Units;
        double[] kelvins = [.. Enumerable.Range(-2, 12).Select(ten => (ten * 10) + 273.15)];
        Control[] controls =
        [
            Control.Choice("layout", "Returns", ["a return of its own for the booster", "joined with the steering's by a tee"], 1),
            Control.Slider("bore", "Bore of the return", BenchMeasures.Cut, BoreMillimetres.Select(bore => bore / 1000)
                .ToArray(), 3, system),
            Control.Slider("oil", "Temperature of the oil", Measure.Temperature, kelvins, 4, system),
        ];
        var explorable = Explorable.Of(id, controls, state =>
        {
            Length bore = Length.FromMillimeters(BoreMillimetres[state["bore"]]);
            Pressure relief = job.Booster.ReliefPressure;
            ReturnFlow at = flow with
            {
                Plumbing = state["layout"] == 0
                    ? UsualPlumbing.SeparateReturns(bore, length, relief) : UsualPlumbing.JoinedReturns(bore, length, relief),
                Temperature = Temperature.FromKelvins(kelvins[state["oil"]]),
            };
            ReleaseEffect effect = ReleaseEffect.Of(at, job.Booster, job.Master, job.RodTravel, job.MakersLimit);
            return new Frame(
                [BenchFigures.BackPressure(at, [kelvins[state["oil"]] - 273.15], effect.SpringPressure, effect.SpringPressure * 2, system,
                    $"{id}-pressure")],
                [
                    new Readout("In the return, at rest", BenchMeasures.BackPressure.Text(effect.Standing, system)),
                    new Readout("Stays on the brakes", BenchMeasures.BackPressure.Text(effect.ResidualLinePressure, system)),
                    new Readout("Pedal back within", effect.ReleaseTime is { } time ? Measure.Time.Text(time, system) : "not by springs"),
                ],
                new Verdict(InBoth.Only($"{effect.Finding.What} {effect.Finding.Why}", system == UnitSystem.Us),
                    effect.Finding.Severity == BenchSeverity.Pass ? VerdictKind.Good : VerdictKind.Caution));
        });

        // Only a flow and a job of the same file can be read again together.
        return ReferenceEquals(SourceText.Of(flow), SourceText.Of(job))
            ? explorable.AgainFrom(flow, "return", system, ("metres", length.Meters)) : explorable;
    }
}
