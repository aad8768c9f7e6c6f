using BrakeBalance.Balance;
using BrakeBalance.Measurements;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>The balance of a car in all its load cases: what the headless answers print.</summary>
/// <param name="Vehicle">The car.</param>
/// <param name="LoadCases">One part for each load case asked for.</param>
/// <param name="Verdicts">The distribution rules; informative, no type approval.</param>
/// <param name="Setting">Where to set the valve or the balance bar.</param>
/// <param name="Notices">What the reader should be told in words, such as a rear wheel that would leave the road.</param>
public sealed record BalanceSummary(
    Vehicle Vehicle,
    IReadOnlyList<LoadCaseSummary> LoadCases,
    IReadOnlyList<RuleVerdict> Verdicts,
    Setting Setting,
    IReadOnlyList<string> Notices)
{
    /// <summary>The speed at which drag, lift and downforce act.</summary>
    public Speed Speed { get; init; }

    /// <summary>Whether it is of a drawn car, of which only numbers are wanted.</summary>
    private bool NumbersOnly { get; init; }

    /// <summary>What the driver's foot does in the load cases of this summary.</summary>
    /// <returns>The summary of the control; null when the vehicle file describes none.</returns>
    public ControlSummary? Control() => ControlSummary.Of(Vehicle, null, LoadCases is [var only] ? only.LoadCase.Name : null, NumbersOnly);

    /// <summary>Decelerations shown when none are asked for [–].</summary>
    public static IReadOnlyList<double> DefaultBrakingRates { get; } = [0.2, 0.4, 0.6, 0.8, 1.0];

    /// <summary>Adhesions tried when none are asked for [–].</summary>
    public static IReadOnlyList<double> DefaultAdhesions { get; } = [0.2, 0.3, 0.5, 0.7, 0.8, 0.9, 1.0, 1.2];

    /// <summary>Computes the summary of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="brakingRates">Decelerations [–], above 0 and at most 2; the default ones when null.</param>
    /// <param name="adhesions">Adhesions [–], above 0 and at most 2; the default ones and the car's highest when null.</param>
    /// <param name="loadCase">Name of the only load case wanted; all when null.</param>
    /// <param name="speed">Speed for drag and lift; standstill unless said.</param>
    /// <exception cref="ArgumentException">There is no such load case, or the car cannot be computed; the message says why.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A deceleration or adhesion is out of its range.</exception>
    public static BalanceSummary Of(
        Vehicle vehicle, IReadOnlyList<double>? brakingRates = null, IReadOnlyList<double>? adhesions = null, string? loadCase = null,
            Speed speed = default)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        brakingRates ??= DefaultBrakingRates;
        adhesions ??= vehicle.Conditions.RoadsWith(DefaultAdhesions);
        foreach (double rate in brakingRates)
        {
            Require.PositiveUpTo(rate, 2, nameof(brakingRates));
        }

        return Of(vehicle, brakingRates, adhesions, loadCase, speed, null);
    }

    /// <summary>The summary with those of the cars that the ranges of its file allow.</summary>
    /// <returns>The summary and the numbers of the others; their setting is that of the whole, which has its own band.</returns>
    public Banded<BalanceSummary> Bands() => Banded.Of(Vehicle, car => ReferenceEquals(car, Vehicle) ? this
        : Of(car, [.. LoadCases[0].Rates.Select(rate => rate.BrakingRate)], [.. LoadCases[0].LockUps.Select(surface => surface.Adhesion)],
            LoadCases is [var only] ? only.LoadCase.Name : null, Speed, Setting));

    private static BalanceSummary Of(
        Vehicle vehicle, IReadOnlyList<double> brakingRates, IReadOnlyList<double> adhesions, string? loadCase, Speed speed, Setting? known)
    {
        IEnumerable<LoadCase> loads = loadCase is null ? vehicle.LoadCases : [vehicle.LoadCase(loadCase)];
        IReadOnlyList<LoadCaseSummary> parts =
            [.. loads.Select(load => LoadCaseSummary.Of(new BalanceModel(vehicle, load, speed), brakingRates, adhesions))];
        return new(vehicle, parts, DistributionRules.Check(vehicle), known ?? Setting.Of(vehicle),
            [.. parts.SelectMany(part => part.Notices)])
        {
            Speed = speed,
            NumbersOnly = known is not null,
        };
    }
}

/// <summary>The balance of a car in one load case.</summary>
/// <param name="LoadCase">The state of load.</param>
/// <param name="StaticAxleLoads">Axle loads without braking, less lift at the speed asked for.</param>
/// <param name="RearLiftOffRate">Deceleration at which the rear wheels leave the road [–].</param>
/// <param name="Rates">The car at each deceleration asked for.</param>
/// <param name="LockUps">The first lock-up on each surface asked for.</param>
/// <param name="IdealCrossings">Where installed and ideal distribution agree.</param>
/// <param name="Knees">Where the valves in the rear line begin to hold pressure back.</param>
/// <param name="Notices">What the reader should be told in words.</param>
public sealed record LoadCaseSummary(
    LoadCase LoadCase,
    PerAxle<Force> StaticAxleLoads,
    double RearLiftOffRate,
    IReadOnlyList<RateSummary> Rates,
    IReadOnlyList<SurfaceSummary> LockUps,
    IReadOnlyList<BalancePoint> IdealCrossings,
    IReadOnlyList<BalancePoint> Knees,
    IReadOnlyList<string> Notices)
{
    // A dry road, and what a locked wheel keeps of its adhesion (common practice).
    private const double ReleaseAdhesion = Conditions.DryAdhesion;
    private const double SlidingShare = 0.75;

    internal static LoadCaseSummary Of(BalanceModel model, IReadOnlyList<double> brakingRates, IReadOnlyList<double> adhesions)
    {
        IReadOnlyList<RateSummary> rates =
            [.. brakingRates.Select(rate =>
            new RateSummary(rate, model.NormalReactions(rate), model.IdealForces(rate), model.AtRate(rate)))];
        IReadOnlyList<SurfaceSummary> lockUps =
            [.. adhesions.Select(adhesion => new SurfaceSummary(adhesion, model.FirstLockUp(adhesion)))];
        return new(model.LoadCase, model.StaticAxleLoads, model.RearLiftOffRate, rates, lockUps, model.IdealCrossings(), model.RearKnees(),
            Warnings(model, rates, lockUps));
    }

    private static List<string> Warnings(BalanceModel model, IReadOnlyList<RateSummary> rates, IReadOnlyList<SurfaceSummary> lockUps)
    {
        string name = model.LoadCase.Name;
        List<string> warnings = [];
        double greatest = Math.Max(rates.Select(rate => rate.BrakingRate).DefaultIfEmpty(0)
            .Max(), lockUps.Select(surface => model.GreatestRate(surface.Adhesion)).DefaultIfEmpty(0).Max());
        if (model.RearLiftOffRate <= greatest)
        {
            warnings.Add(Invariant.Text($"{name}: the rear wheels leave the road at a deceleration of ")
                + Invariant.Text($"{model.RearLiftOffRate:0.00} g; beyond it the front axle carries the whole car."));
        }

        string[] rearFirst = [.. lockUps.Where(surface => surface.LockUp?.First == Axle.Rear)
            .Select(surface => Invariant.Text($"{surface.Adhesion:0.00}"))];
        if (rearFirst.Length > 0)
        {
            warnings.Add($"{name}: the rear axle locks first at adhesion {string.Join(", ", rearFirst)}. "
                + "Rear-first lock-up spins the car.");
        }

        string[] none = [.. lockUps.Where(surface => surface.LockUp is null).Select(surface => Invariant.Text($"{surface.Adhesion:0.00}"))];
        if (none.Length > 0)
        {
            warnings.Add($"{name}: no axle locks up to {InBoth.Text(model.MaximumPressure)} at adhesion {string.Join(", ", none)}.");
        }

        if (Release(model) is { } release)
        {
            warnings.Add(release);
        }

        return warnings;
    }

    // A rear line that holds its pressure keeps the rear axle locked as the foot eases, whatever the order in which the axles locked.
    private static string? Release(BalanceModel model)
    {
        if (!model.Vehicle.Hydraulics.RearValves.Any(valve => valve.LetsGoLate))
        {
            return null;
        }

        var eased = ReleaseBehaviour.Of(model, model.MaximumPressure, ReleaseAdhesion, SlidingShare);
        if (eased.LocksAt.Rear is null)
        {
            return null;
        }

        string on = Invariant.Text($"{model.LoadCase.Name}: foot eased on adhesion {ReleaseAdhesion:0.00} "
            + $"with both axles locked (sliding {100 * SlidingShare:0} % of it): ");
        string turns = $"the rear turns again at {Text(eased.FreeAt.Rear)}, the front at {Text(eased.FreeAt.Front)}";
        if (eased.RearIsFreeWithFront)
        {
            return $"{on}{turns}.";
        }

        Pressure? knee = model.Vehicle.Hydraulics.RearProportioningValve is null
            ? null
            : ReleaseBehaviour.HighestKnee(model.Vehicle, model.LoadCase, model.MaximumPressure, ReleaseAdhesion, SlidingShare,
                model.Speed);
        return $"{on}{turns}: the valve's hysteresis keeps the rear locked longer, which can spin the car"
            + (knee is null ? "." : $"; a knee of at most {Text(knee)} does not.");

        static string Text(Pressure? pressure) => pressure is { } known
            ? Invariant.Text($"{known.Bars:0.#} bar ({known.PoundsForcePerSquareInch:0} psi)")
            : "no pressure";
    }
}

/// <summary>The car at one deceleration.</summary>
/// <param name="BrakingRate">z [–].</param>
/// <param name="NormalReactions">Dynamic axle loads.</param>
/// <param name="IdealForces">Ideal braking force of each axle.</param>
/// <param name="Installed">What the installed brakes do at that rate; null when the highest pressure does not reach it.</param>
public sealed record RateSummary(double BrakingRate, PerAxle<Force> NormalReactions, PerAxle<Force> IdealForces, BalancePoint? Installed);

/// <summary>The first lock-up on one surface.</summary>
/// <param name="Adhesion">Coefficient of adhesion [–].</param>
/// <param name="LockUp">The lock-up; null when none happens up to the highest pressure.</param>
public sealed record SurfaceSummary(double Adhesion, LockUp? LockUp);
