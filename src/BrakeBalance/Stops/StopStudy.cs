using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>Many emergency stops with adhesion, load and friction drawn at random, on all processors.</summary>
/// <remarks>
/// <para>Stops are numbered; each draws from its own generator, so the outcome does not depend on how the work is shared out.</para>
/// <para>Source: plain Monte Carlo sampling.</para>
/// </remarks>
public static class StopStudy
{
    private const int Batch = 250;

    /// <summary>Runs a study.</summary>
    /// <param name="vehicle">The vehicle; all its load cases take part.</param>
    /// <param name="plan">What varies.</param>
    /// <param name="progress">Told the number of stops done, now and then, from several threads; null for nobody.</param>
    /// <param name="cancellation">Ends the study early.</param>
    /// <returns>The outcome of every stop.</returns>
    /// <exception cref="OperationCanceledException">The study was ended early.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A drum's shoe would lock by itself within the friction spread.</exception>
    public static StopStudyResult Run(Vehicle vehicle, StopStudyPlan plan, IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(plan);
        StopSetup[] setups = [.. vehicle.LoadCases.Select(load => StopSetup.From(vehicle, load, 1, conditions: plan.Conditions))];
        PerAxle<double[]> spread = vehicle.Brakes.Select(brake => TorqueFactors(brake, plan.FrictionSpread));
        var stops = new StudiedStop[plan.Stops];
        int done = 0;
        Parallel.For(0, (plan.Stops + Batch - 1) / Batch, new ParallelOptions { CancellationToken = cancellation }, batch =>
        {
            int end = Math.Min(plan.Stops, (batch + 1) * Batch);
            for (int i = batch * Batch; i < end; i++)
            {
                stops[i] = One(setups, plan, spread, i);
            }

            progress?.Report(Interlocked.Add(ref done, end - batch * Batch));
        });
        return new StopStudyResult(plan, stops);
    }

    private static StudiedStop One(StopSetup[] setups, StopStudyPlan plan, PerAxle<double[]> spread, int number)
    {
        var draw = new Random(unchecked(plan.Seed * 1_000_003 + number));
        StopSetup setup = setups[draw.Next(setups.Length)];
        double adhesion = plan.LowestAdhesion + (plan.HighestAdhesion - plan.LowestAdhesion) * draw.NextDouble();
        double front = draw.NextDouble();
        double rear = draw.NextDouble();
        BrakedCar car = setup.Car with
        {
            Axles = new(
                Drawn(setup.Car.Axles.Front, adhesion, Between(spread.Front, front)),
                    Drawn(setup.Car.Axles.Rear, adhesion, Between(spread.Rear, rear))),
        };
        var rate = PressureChangeRate.FromPascalsPerSecond(setup.EmergencyPressure.Pascals / plan.RiseTime.Seconds);
        PressureBuildUp buildUp = setup.BuildUp with { RampRate = rate };
        StopResult stop = StraightStop.Run(car, setup.Emergency, buildUp, plan.InitialSpeed, withTrace: false);
        return new StudiedStop(stop.FirstLock, stop.Distance.Meters);
    }

    private static BrakedAxle Drawn(BrakedAxle axle, double adhesion, double torqueFactor) => axle with
    {
        Tyre = axle.Tyre with { AdhesionScale = axle.Tyre.AdhesionScale * adhesion },
        Brakes = axle.Brakes.Scaled(torqueFactor),
    };

    /// <summary>Torque over nominal torque at evenly spaced frictions from the lowest to the highest.</summary>
    private static double[] TorqueFactors(Brake brake, double spread) =>
    [
        .. Enumerable.Range(-10, 21)
            .Select(i => brake.BrakeFactorNear(brake.FrictionCoefficient * (1 + i / 10.0 * spread)) / brake.BrakeFactor),
    ];

    private static double Between(double[] values, double place)
    {
        double at = place * (values.Length - 1);
        int low = Math.Min((int)at, values.Length - 2);
        return values[low] + (at - low) * (values[low + 1] - values[low]);
    }
}

/// <summary>One stop of a study.</summary>
/// <param name="FirstLock">The axle that locked first; null when none did.</param>
/// <param name="DistanceMetres">Stopping distance in metres.</param>
public readonly record struct StudiedStop(Axle? FirstLock, double DistanceMetres);

/// <summary>Outcome of a study.</summary>
/// <param name="Plan">What varied.</param>
/// <param name="Stops">Every stop, in order of its number.</param>
public sealed record StopStudyResult(StopStudyPlan Plan, IReadOnlyList<StudiedStop> Stops)
{
    /// <summary>Part of the stops in which the rear axle locked first [–].</summary>
    public double RearFirstShare => Stops.Count(s => s.FirstLock == Axle.Rear) / (double)Stops.Count;

    /// <summary>Part of the stops in which no axle locked [–].</summary>
    public double NoLockShare => Stops.Count(s => s.FirstLock is null) / (double)Stops.Count;

    /// <summary>The distance that a part of the stops stay below.</summary>
    /// <param name="share">That part [–]; 0 to 1.</param>
    /// <returns>Distance, by linear interpolation between the ordered distances.</returns>
    public Length DistanceQuantile(double share)
    {
        Require.Between(share, 0, 1, nameof(share));
        double[] ordered = [.. Stops.Select(s => s.DistanceMetres).Order()];
        double place = share * (ordered.Length - 1);
        int low = (int)place;
        int high = Math.Min(low + 1, ordered.Length - 1);
        return Length.FromMeters(ordered[low] + (place - low) * (ordered[high] - ordered[low]));
    }
}
