using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Stops;

/// <summary>Braking torque of one axle against line pressure at the master cylinder: valves, then straight pieces between given
/// points.</summary>
/// <remarks>
/// <para>The pieces run from no torque at no pressure through the points; past the last point the last piece goes on.</para>
/// <para>
/// Valves of a car's own hydraulics look at the rear axle's load of that moment, and at the highest outlet they have reached where they
/// have hysteresis.
/// </para>
/// <para>Assumes quasi-static pressure: no lag between master cylinder and brake beyond that of the pressure build-up.</para>
/// <para>Source: piecewise linear interpolation; the valves and points come from the hydraulics and brakes of the car.</para>
/// </remarks>
public sealed class TorqueCurve
{
    private readonly double[] _pascals;
    private readonly double[] _newtonMetres;

    private readonly ImmutableArray<PressureValve> _valves;
    private readonly double _pressureRatio;

    private TorqueCurve(double[] pascals, double[] newtonMetres, ImmutableArray<PressureValve> valves, double pressureRatio,
        double highestPascals)
    {
        _pascals = pascals;
        _newtonMetres = newtonMetres;
        _valves = valves;
        _pressureRatio = pressureRatio;
        HighestPascals = highestPascals;
        SensesLoad = valves.Any(valve => valve.SensesLoad);
        LetsGoLate = valves.Any(valve => valve.LetsGoLate);
        LagSeconds = valves.OfType<LoadSensingValve>().Select(valve => valve.Lag.Seconds).DefaultIfEmpty(0).Max();
    }

    /// <summary>A curve through measured or computed points.</summary>
    /// <param name="points">
    /// Line pressure at the master cylinder (gauge) and braking torque of both brakes of the axle; pressures above zero and rising,
    /// torques never falling.
    /// </param>
    /// <returns>The curve, which starts at no torque at no pressure.</returns>
    /// <exception cref="ArgumentException">There is no point, a pressure does not rise, or a torque falls or is negative.</exception>
    public static TorqueCurve Through(IEnumerable<(Pressure LinePressure, Torque BrakingTorque)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        double[][] columns = [.. points.Select(p => new[] { p.LinePressure.Pascals, p.BrakingTorque.NewtonMeters })];
        double[] pascals = [0, .. columns.Select(c => c[0])];
        double[] torques = [0, .. columns.Select(c => c[1])];
        Refuse.If(pascals.Length < 2, "Must hold at least one point.", nameof(points));

        for (int i = 1; i < pascals.Length; i++)
        {
            Refuse.If(!(pascals[i] > pascals[i - 1]) || !(torques[i] >= torques[i - 1]),
                $"Pressures must rise and torques must not fall from point to point; point {i} is {pascals[i]} Pa, "
                    + $"{torques[i]} N·m after {pascals[i - 1]} Pa, {torques[i - 1]} N·m.", nameof(points));
        }

        return new TorqueCurve(pascals, torques, [], 1, pascals[^1]);
    }

    /// <summary>The curve of a brake behind the valves of its line.</summary>
    /// <param name="brake">The brake of one wheel; the axle has two.</param>
    /// <param name="hydraulics">The car's hydraulics.</param>
    /// <param name="axle">Which axle's line.</param>
    /// <returns>The curve; it follows the rear axle's load where a valve senses it.</returns>
    public static TorqueCurve Behind(Brake brake, BrakeHydraulics hydraulics, Axle axle)
    {
        ArgumentNullException.ThrowIfNull(brake);
        ArgumentNullException.ThrowIfNull(hydraulics);
        double threshold = brake.ThresholdPressure.Pascals;
        double beyond = threshold + 1e7;
        double torque = 2 * brake.BrakingTorque(Pressure.FromPascals(beyond)).NewtonMeters;
        (double[] pascals, double[] torques) = threshold > 0
            ? (new[] { 0, threshold, beyond }, new[] { 0, 0, torque })
            : (new[] { 0, beyond }, new[] { 0, torque });
        return new TorqueCurve(
            pascals, torques, axle == Axle.Front ? hydraulics.FrontValves : hydraulics.RearValves,
            axle == Axle.Front ? 1 : hydraulics.Split.RearToFrontPressureRatio, hydraulics.MaximumPressure.Pascals);
    }

    /// <summary>A curve that rises in proportion to pressure.</summary>
    /// <param name="linePressure">A line pressure, gauge; above zero.</param>
    /// <param name="brakingTorque">Braking torque of both brakes of the axle at that pressure; not negative.</param>
    /// <returns>The straight line from the origin through that point.</returns>
    public static TorqueCurve Proportional(Pressure linePressure, Torque brakingTorque) => Through([(linePressure, brakingTorque)]);

    /// <summary>The curve with every torque multiplied, as when pad friction changes.</summary>
    /// <param name="factor">Factor on the torque [–]; not negative.</param>
    public TorqueCurve Scaled(double factor)
    {
        Require.NotNegative(factor, nameof(factor));
        return new TorqueCurve(_pascals, Array.ConvertAll(_newtonMetres, t => t * factor), _valves, _pressureRatio, HighestPascals);
    }

    /// <summary>Highest pressure at the master cylinder among the points or considered for the car, in pascals.</summary>
    internal double HighestPascals { get; }

    internal bool SensesLoad { get; }

    /// <summary>Time constant with which the slowest load-sensing valve follows that load, in seconds.</summary>
    internal double LagSeconds { get; }

    /// <summary>Whether a valve's outlet stands higher as the pressure falls.</summary>
    internal bool LetsGoLate { get; }

    internal int Valves => _valves.Length;

    /// <summary>The torque in newton metres at a rising pressure in pascals.</summary>
    internal double NewtonMetres(double pascals, double rearLoadNewtons) =>
        AtLine(BrakeHydraulics.Through(_valves, pascals * _pressureRatio, rearLoadNewtons));

    /// <summary>The torque in newton metres at a pressure in pascals, behind valves that have reached the given outlets.</summary>
    internal double NewtonMetres(double pascals, double rearLoadNewtons, ReadOnlySpan<double> highestOutlets) =>
        AtLine(LinePascals(pascals, rearLoadNewtons, highestOutlets));

    /// <summary>The pressure at the brakes in pascals, behind valves that have reached the given outlets.</summary>
    internal double LinePascals(double pascals, double rearLoadNewtons, ReadOnlySpan<double> highestOutlets) =>
        BrakeHydraulics.Through(_valves, pascals * _pressureRatio, rearLoadNewtons, highestOutlets);

    /// <summary>Raises the outlets that the valves have reached.</summary>
    internal void Remember(double pascals, double rearLoadNewtons, Span<double> highestOutlets) =>
        BrakeHydraulics.Remember(_valves, pascals * _pressureRatio, rearLoadNewtons, highestOutlets);

    private double AtLine(double pascals) => pascals <= 0 ? 0 : StraightPieces.At(_pascals, _newtonMetres, pascals);
}
