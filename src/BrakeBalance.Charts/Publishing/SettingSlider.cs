using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The settings that a slider goes through: all that a page needs of the answer, whose logs it need not fit again.</summary>
/// <param name="Values">Knees in pascals, gauge, or front shares of a balance bar [–]; rising.</param>
/// <param name="Start">The place of the present one; beyond the last where no valve is fitted.</param>
/// <param name="Safe">The safe limit among them; null for none.</param>
/// <param name="Recommended">The recommended one among them; null for none.</param>
/// <param name="Slope">The slope of a valve that is added [–].</param>
public sealed record SettingSlider(IReadOnlyList<double> Values, int Start, double? Safe, double? Recommended, double Slope)
{
    internal static SettingSlider Of(Setting setting, int steps, UnitSystem units)
    {
        BrakeHydraulics hydraulics = setting.Vehicle.Hydraulics;
        double? Of(SettingValue? value) => IsBar(setting.Vehicle) ? value?.FrontForceShare : value?.Knee?.Pascals;
        double[] values;
        int start;
        if (IsBar(setting.Vehicle))
        {
            (values, start) = SettingChoices.Shares(setting, ((BalanceBarSplit)hydraulics.Split).FrontForceShare, steps);
        }
        else
        {
            (Pressure[] knees, start) = SettingChoices.Knees(setting, steps, units);
            values = [.. knees.Select(knee => knee.Pascals)];
        }

        double own = values[start];
        (double? safe, double? recommended) = (Of(setting.MarkedLimit), Of(setting.Recommended));
        SettingChoices.Put(values, safe, [own, recommended ?? 0]);
        return new(values, IsBar(setting.Vehicle) || hydraulics.RearProportioningValve is not null ? Array.IndexOf(values, own)
            : values.Length, safe, recommended, setting.Middle.Slope ?? SettingSearch.AddedSlope);
    }

    /// <summary>Reads what <see cref="Json"/> wrote; null for nothing.</summary>
    internal static SettingSlider? Read(JsonNode? node) => node is null ? null : new(
        [.. node["values"]!.AsArray().Select(value => value!.GetValue<double>())], node["start"]!.GetValue<int>(),
        node["safe"]?.GetValue<double>(), node["recommended"]?.GetValue<double>(), node["slope"]!.GetValue<double>());

    internal JsonObject Json() => new()
    {
        ["values"] = new JsonArray([.. Values.Select(value => JsonValue.Create(value))]),
        ["start"] = Start,
        ["safe"] = Safe,
        ["recommended"] = Recommended,
        ["slope"] = Slope,
    };

    /// <summary>The car at each setting; where it is the present one, as it is.</summary>
    internal Vehicle[] Cars(Vehicle vehicle) =>
        [.. Values.Select((value, i) => i == Start ? vehicle : Set(vehicle, value)), .. Start < Values.Count ? (Vehicle[])[] : [vehicle]];

    /// <summary>The car set as recommended; null when nothing is, or when a valve would have to be added.</summary>
    internal Vehicle? RecommendedOf(Vehicle vehicle) => Recommended is { } value && Start < Values.Count ? Set(vehicle, value) : null;

    /// <summary>The slider, which says of its settings which is which.</summary>
    internal Control Control(Vehicle vehicle, UnitSystem units)
    {
        IEnumerable<string> texts = IsBar(vehicle)
            ? Exploring.Control.Slider("bar", "", Measure.Pure("front share", "%", 100, 0.1), [.. Values], Start, units).Settings
            : SettingChoices.Texts(Values.Select(value => Pressure.FromPascals(value)), units);
        texts = texts.Select((text, i) => string.Join(", ", [Values[i] == Safe && !IsBar(vehicle)
            ? SettingWords.Number(Pressure.FromPascals(Values[i]), units).Replace(' ', '\u00a0') : text, .. new (bool Is, string Name)[]
        {
            (i == Start, "present setting"), (Values[i] == Safe, "safe limit"), (Values[i] == Recommended, "recommended setting"),
        }.Where(mark => mark.Is).Select(mark => mark.Name)]));
        return Exploring.Control.Slider("setting", IsBar(vehicle) ? "Front share of the balance bar" : "Knee pressure of the valve",
            Start < Values.Count ? texts : texts.Append("none fitted"), Start);
    }

    private static bool IsBar(Vehicle vehicle) => vehicle.Hydraulics is { Split: BalanceBarSplit, RearProportioningValve: null };

    private Vehicle Set(Vehicle vehicle, double value) =>
        IsBar(vehicle) ? vehicle.WithFrontForceShare(value) : vehicle.WithRearKnee(Pressure.FromPascals(value), Slope);
}
