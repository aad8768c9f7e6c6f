using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>One number of a valve as the gauges found it, beside what is usual.</summary>
/// <param name="Name">Name, such as "hysteresis".</param>
/// <param name="Measure">What it is shown in.</param>
/// <param name="Per">What it is counted by, such as " a minute"; empty for nothing.</param>
/// <param name="Value">The number in SI units with its 90 % interval.</param>
/// <param name="Usual">Least and greatest that is usual, in SI units; null when there is no such range.</param>
/// <param name="Source">Where that range is from; empty without one.</param>
public sealed record ValveProperty(
    string Name, Measure Measure, string Per, Interval<double> Value, (double Low, double High)? Usual, string Source)
{
    private const string Practice = "common practice";
    private const string Leak = "4 bar in 45 s with 50 bar held; service practice, from memory";

    /// <summary>Whether the whole interval lies outside what is usual.</summary>
    public bool IsOutside => Usual is { } usual && (Value.High < usual.Low || Value.Low > usual.High);

    internal static IReadOnlyList<ValveProperty> Of(GaugeAnalysis analysis)
    {
        List<ValveProperty> found = [];
        void Add(string name, Measure measure, Interval<double>? value, (double, double)? usual, string source, string per = "")
        {
            if (value is { } read)
            {
                found.Add(new(name, measure, per, read, usual, source));
            }
        }

        static Interval<double> Pascals(Interval<Pressure> of) => of.Select(pressure => pressure.Pascals);
        (double, double) usualKnee = (0, 75e5);
        if (analysis.Calibration is { } line)
        {
            Add("knee, fully out", Measure.LinePressure, Pascals(line.KneeAt(0)), usualKnee, Practice);
            Add("knee", Measure.LinePressure, Pascals(line.KneePerTurn), null, "", " a turn");
        }
        else if (analysis.Positions.FirstOrDefault(position => position.Apply?.Knee is not null) is { Apply.Knee: { } knee })
        {
            Add("knee", Measure.LinePressure, Pascals(knee), usualKnee, Practice);
        }

        Add("slope", Measure.Number, analysis.Slope, (0.2, 0.5), Practice);
        Add("hysteresis", Measure.LinePressure, analysis.Hysteresis is { } gap ? Pascals(gap) : null, (0, 5e5), Practice);
        if (analysis.Held is { } held)
        {
            Add("creep", Measure.LinePressure, Pascals(held.Creep), (-2e5, 2e5), Practice, " a minute");
            Add("leak-down, front", Measure.LinePressure, Pascals(held.FrontFall), (-5.3e5, 5.3e5), Leak, " a minute");
            Add("leak-down, rear", Measure.LinePressure, Pascals(held.RearFall), (-5.3e5, 5.3e5), Leak, " a minute");
        }

        return found;
    }
}
