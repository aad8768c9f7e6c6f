namespace BrakeBalance.Measurements;

/// <summary>The knee as a straight line in the turns of the adjuster.</summary>
/// <remarks>
/// Weighted least squares of the knees of the single positions, given the slope they share; weights from their errors, the scatter never
/// taken smaller than they say, the error of the shared slope carried along.
/// </remarks>
public sealed record AdjusterCalibration
{
    private readonly double _atMeanBars;
    private readonly double _perTurnBars;
    private readonly double[] _covariance;
    private readonly double _meanTurns;
    private readonly double _halfWidth;

    internal AdjusterCalibration(double atMeanBars, double perTurnBars, double[] covariance, double meanTurns, double halfWidth) =>
        (_atMeanBars, _perTurnBars, _covariance, _meanTurns, _halfWidth) = (atMeanBars, perTurnBars, covariance, meanTurns, halfWidth);

    /// <summary>Change of the knee a turn, with its 90 % interval; positive when screwing in raises it.</summary>
    public Interval<Pressure> KneePerTurn => Band(_perTurnBars, Math.Sqrt(_covariance[2]));

    /// <summary>Lowest turns measured.</summary>
    public required double LowestTurns { get; init; }

    /// <summary>Highest turns measured.</summary>
    public required double HighestTurns { get; init; }

    /// <summary>How many positions were fitted; with two, the interval rests on the scatter within the positions alone.</summary>
    public required int Positions { get; init; }

    /// <summary>The knee at a position of the adjuster, with its 90 % interval.</summary>
    /// <param name="turns">Turns from fully out.</param>
    /// <returns>Knee, gauge; the bound is cut at zero.</returns>
    public Interval<Pressure> KneeAt(double turns)
    {
        double d = turns - _meanTurns;
        double variance = _covariance[0] + 2 * d * _covariance[1] + d * d * _covariance[2];
        return Band(_atMeanBars + _perTurnBars * d, Math.Sqrt(variance)).Select(p => Pressure.FromBars(Math.Max(0, p.Bars)));
    }

    /// <summary>The turns that set a wanted knee, with the 90 % interval.</summary>
    /// <param name="knee">Wanted knee, gauge.</param>
    /// <returns>Turns from fully out; null when the knee does not clearly move with the adjuster.</returns>
    public Interval<double>? TurnsFor(Pressure knee)
    {
        Interval<Pressure> perTurn = KneePerTurn;
        if (perTurn.Low.Bars * perTurn.High.Bars <= 0)
        {
            return null;
        }

        double turns = _meanTurns + (knee.Bars - _atMeanBars) / _perTurnBars;
        Interval<Pressure> there = KneeAt(turns);
        double half = (there.High - there.Low).Bars / 2 / Math.Abs(_perTurnBars);
        return new Interval<double>(turns, turns - half, turns + half);
    }

    internal AdjusterCalibration Times(double ratio) => new(
        _atMeanBars * ratio, _perTurnBars * ratio, [.. _covariance.Select(c => c * ratio * ratio)], _meanTurns, _halfWidth)
    {
        LowestTurns = LowestTurns,
        HighestTurns = HighestTurns,
        Positions = Positions,
    };

    private Interval<Pressure> Band(double bars, double error) => new(
        Pressure.FromBars(bars),
        Pressure.FromBars(bars - _halfWidth * error),
        Pressure.FromBars(bars + _halfWidth * error));
}
