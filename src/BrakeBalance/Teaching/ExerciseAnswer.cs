using UnitsNet.Units;

namespace BrakeBalance.Teaching;

/// <summary>
/// The answer to an exercise: a quantity or a fraction, how near an answer must come, and the wrong answers that tell what went wrong.
/// </summary>
public sealed record ExerciseAnswer
{
    private static readonly Dictionary<Type, (Enum Si, Enum Us)> LeadUnits = new()
    {
        [typeof(Force)] = (ForceUnit.Newton, ForceUnit.PoundForce),
        [typeof(Pressure)] = (PressureUnit.Bar, PressureUnit.PoundForcePerSquareInch),
        [typeof(Length)] = (LengthUnit.Millimeter, LengthUnit.Inch),
        [typeof(Torque)] = (TorqueUnit.NewtonMeter, TorqueUnit.PoundForceFoot),
        [typeof(Energy)] = (EnergyUnit.Kilojoule, EnergyUnit.FootPound),
        [typeof(Power)] = (PowerUnit.Kilowatt, PowerUnit.MechanicalHorsepower),
        [typeof(Area)] = (AreaUnit.SquareMillimeter, AreaUnit.SquareInch),
        [typeof(Mass)] = (MassUnit.Kilogram, MassUnit.Pound),
        [typeof(Speed)] = (SpeedUnit.KilometerPerHour, SpeedUnit.MilePerHour),
        [typeof(TemperatureDelta)] = (TemperatureDeltaUnit.DegreeCelsius, TemperatureDeltaUnit.DegreeFahrenheit),
    };

    private const double Relative = 0.03;

    private ExerciseAnswer()
    {
    }

    /// <summary>The answer as a quantity; null for a fraction.</summary>
    public IQuantity? Quantity { get; private init; }

    /// <summary>The answer as a fraction [–]; null for a quantity.</summary>
    public double? Fraction { get; private init; }

    /// <summary>
    /// How far off an answer may be: 3 % for a quantity; for a fraction 2.5 % of it, at least 0.006 and at most 0.02 [–] (common practice
    /// for school sheets).
    /// </summary>
    public double Tolerance => Fraction is { } fraction ? Slack(true, fraction) : Relative;

    /// <summary>Wrong answers that tell what went wrong; none lies within the tolerance of the right one.</summary>
    public required IReadOnlyList<Mistake> Mistakes { get; init; }

    /// <summary>The kind of quantity; null for a fraction.</summary>
    public Type? QuantityType => Quantity?.QuantityInfo.ValueType;

    /// <summary>A quantity as the answer.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="mistakes">Wrong answers and their names; those too near the right one are left out.</param>
    public static ExerciseAnswer Of(IQuantity quantity, params (string Name, IQuantity Value)[] mistakes)
    {
        double right = KnownQuantities.Si(quantity);
        return new()
        {
            Quantity = quantity,
            Mistakes = [.. mistakes.Select(mistake => new Mistake(mistake.Name, KnownQuantities.Si(mistake.Value)))
                .Where(mistake => Math.Abs(mistake.Value - right) > 2 * Slack(false, right))],
        };
    }

    /// <summary>A fraction as the answer.</summary>
    /// <param name="fraction">The fraction [–].</param>
    /// <param name="mistakes">Wrong answers and their names; those too near the right one are left out.</param>
    public static ExerciseAnswer Of(double fraction, params (string Name, double Value)[] mistakes) => new()
    {
        Fraction = fraction,
        Mistakes = [.. mistakes.Select(mistake => new Mistake(mistake.Name, mistake.Value))
            .Where(mistake => Math.Abs(mistake.Value - fraction) > 2 * Slack(true, fraction))],
    };

    /// <summary>How far off a value may be, in the unit of the value.</summary>
    internal static double Slack(bool isFraction, double around) =>
        isFraction ? Math.Clamp(0.025 * Math.Abs(around), 0.006, 0.02) : Relative * Math.Abs(around);

    /// <summary>The same kind of answer with another right value, in SI or as a fraction [–], and no mistakes known.</summary>
    internal ExerciseAnswer InPlace(double value) => this with
    {
        Quantity = Quantity is null ? null : KnownQuantities.From(value, Quantity.QuantityInfo.BaseUnitInfo.Value),
        Fraction = Quantity is null ? value : null,
        Mistakes = [],
    };

    /// <summary>The units in which an answer is asked for.</summary>
    /// <param name="us">US units.</param>
    /// <returns>The unit's abbreviation; empty for a fraction.</returns>
    public string Unit(bool us) => Quantity is null ? "" : Abbreviation(LeadUnit(us));

    /// <summary>The answer as text.</summary>
    /// <param name="us">US units.</param>
    /// <returns>Such as "4520 N" or "1016 lbf"; three figures and more.</returns>
    public string Text(bool us) =>
        Fraction is { } fraction ? fraction.ToString("0.000", CultureInfo.InvariantCulture) : Write(Quantity!, LeadUnit(us));

    /// <summary>A known wrong answer as text.</summary>
    /// <param name="mistake">One of <see cref="Mistakes"/>.</param>
    /// <param name="us">US units.</param>
    /// <returns>Such as "2260 N".</returns>
    public string TextOf(Mistake mistake, bool us)
    {
        string text = InPlace(mistake.Value).Text(us);
        return text.StartsWith('-') ? "−" + text[1..] : text;
    }

    internal Enum LeadUnit(bool us) => LeadUnit(Quantity!, us);

    internal static Enum LeadUnit(IQuantity quantity, bool us) =>
        LeadUnits[quantity.QuantityInfo.ValueType] is var units && us ? units.Us : units.Si;

    /// <summary>The right value in SI, or the fraction.</summary>
    internal double RightValue => Quantity is { } quantity ? KnownQuantities.Si(quantity) : Fraction!.Value;

    internal static string Abbreviation(Enum unit) =>
        KnownQuantities.Symbol(unit) switch
        {
            "∆°C" => "°C",
            "∆°F" => "°F",
            "hp(I)" => "hp",
            "ft·lb" => "ft·lbf",
            var text => text,
        };

    private static string Write(IQuantity quantity, Enum unit)
    {
        double value = quantity.As(unit);
        string number = Math.Abs(value) >= 1e5 ? SheetUnits.N(value)
            : value.ToString(Math.Abs(value) >= 100 ? "0" : Math.Abs(value) >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture);
        return number + " " + Abbreviation(unit);
    }
}

/// <summary>A wrong answer that tells what went wrong.</summary>
/// <param name="Name">What went wrong, as a phrase that follows "looks as if".</param>
/// <param name="Value">The value it leads to, in the SI unit of the answer, or as a fraction [–].</param>
public sealed record Mistake(string Name, double Value);
