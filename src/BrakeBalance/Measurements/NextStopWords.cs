using BrakeBalance.Answers;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>The sentences about the stop to make next.</summary>
public static class NextStopWords
{
    /// <summary>Part of the interval that the best stop has to take away to be worth making [–]; our choice.</summary>
    private const double Little = 0.02;

    /// <summary>The stop to make next, in a line.</summary>
    /// <param name="next">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>A sentence without a full stop.</returns>
    public static string Title(NextStops next, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.Candidates is not [CandidateStop first, ..])
        {
            return "No safe stop is left to suggest";
        }

        TestStop stop = first.Stop;
        string turns = stop.Turns is { } t
            ? t == 0 ? ", adjuster fully out"
                : Invariant.Text($", adjuster {t:0.##} turn{(t == 1 ? "" : "s")} in")
            : "";
        return $"Next stop: {LoadCase.Listed(stop.LoadCase!)}, {stop.Surface}{turns}, "
            + $"{Measure.LinePressure.Text(stop.FrontPressure!.Value, units)} in front "
            + $"from {Measure.Speed.Text(stop.InitialSpeed!.Value, units)}";
    }

    /// <summary>What is open, what the stop would take away, and what is never offered.</summary>
    /// <param name="next">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Sentences.</returns>
    public static IReadOnlyList<string> Caption(NextStops next, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(next);
        List<string> words = [Open(next, units)];
        if (next.Candidates is [CandidateStop first, ..])
        {
            words.Add(Invariant.Text($"After the first stop listed {100 * first.WidthLeft:0} % of that width is expected to be left."));
            words.Add(first.IsToLockUp ? "It goes to the first lock-up: release at the first call." : "It should end without lock-up.");
            if (next.Candidates.Min(candidate => candidate.WidthLeft) > 1 - Little)
            {
                words.Add("No single stop narrows it much any more.");
            }
        }

        words.Add(Invariant.Text($"Only stops with a chance of a rear-first lock-up of at most {100 * next.Level:0.#} % are listed")
            + (next.Candidates.Any(candidate => candidate.Stop.Turns is not null)
                ? "; the adjuster comes in from fully out, a quarter of its range at a time." : "."));
        return words;
    }

    /// <summary>When to break off the first stop, or another one that is listed.</summary>
    /// <param name="first">The first stop.</param>
    /// <param name="units">The system of units.</param>
    public static string Abort(CandidateStop first, UnitSystem units) => first.AbortIf(units)
        + $" (the first stop; another when the gauge passes its own pressure by {Measure.LinePressure.Text(PlannedStop.Beyond, units)})";

    private static string Open(NextStops next, UnitSystem units)
    {
        const string what = "at which both axles of the car lock together in the condition that holds the setting back";
        return next.Knee is { } knee
            ? $"Knee {what}: {(knee.Low < Pressure.Zero ? "none low enough" : Measure.LinePressure.Text(knee.Low, units))}"
                + (knee.High < Pressure.Zero ? " (90 %)." : $" to {Measure.LinePressure.Text(knee.High, units)} (90 %).")
            : Invariant.Text($"Share of the rod force on the front cylinder {what}: "
                + $"{100 * next.FrontForceShare!.Value.Low:0.#} to {100 * next.FrontForceShare!.Value.High:0.#} % (90 %).");
    }
}
