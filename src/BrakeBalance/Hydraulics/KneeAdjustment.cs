namespace BrakeBalance.Hydraulics;

/// <summary>The screw of an adjustable proportioning valve: which knee each turn of the adjuster gives.</summary>
/// <remarks>
/// <para>p_k(n) = p_0 + n Δp, turns n counted from fully out; fully out gives the lowest knee on the usual screw type.</para>
/// <para>Assumes a linear spring. Source: common practice; a gauge is the proof.</para>
/// </remarks>
public sealed record KneeAdjustment
{
    /// <summary>Knee with the adjuster fully out, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Knee with the adjuster fully out", Required = true, Low = "0 bar", High = "200 bar", Example = "7 bar",
        HowToMeasure = "Two gauges with the adjuster fully out")]
    [Usual("0 bar", "40 bar", Above = "bar given for psi, or the knee fully in")]
    public required Pressure KneeBackedOff { get; init => field = Require.NotNegative(value); }

    /// <summary>Rise of the knee for one turn in; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Rise of the knee for one turn of the adjuster in", Required = true, Low = "0.1 bar", High = "100 bar", Example = "10 bar",
        HowToMeasure = "Two gauges, one reading per turn")]
    [Usual("1.5 bar", "30 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure KneePerTurn { get; init => field = Require.Positive(value); }

    /// <summary>Turns from fully out to fully in [–]; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Turns from fully out to fully in", Required = true, Low = "0.1", High = "50", Example = "6", HowToMeasure = "Count them")]
    [Usual("1", "15")]
    public required double Turns { get; init => field = Require.Positive(value); }

    /// <summary>Knee after a number of turns in from fully out.</summary>
    /// <param name="turns">Turns in from fully out [–]; 0 to <see cref="Turns"/>.</param>
    /// <returns>The knee, gauge.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="turns"/> is outside the screw's travel.</exception>
    public Pressure KneeAt(double turns) =>
        turns >= 0 && turns <= Turns
            ? KneeBackedOff + turns * KneePerTurn
            : throw new ArgumentOutOfRangeException(nameof(turns), turns,
                Invariant.Text($"Must lie between 0 and {Turns} turns."));

    /// <summary>Turns in from fully out that give a knee.</summary>
    /// <param name="knee">The knee wanted, gauge.</param>
    /// <returns>Turns [–]; null when the screw does not reach that knee.</returns>
    public double? TurnsFor(Pressure knee)
    {
        double turns = (knee - KneeBackedOff) / KneePerTurn;
        return turns >= -1e-9 && turns <= Turns + 1e-9 ? Math.Clamp(turns, 0, Turns) : null;
    }
}
