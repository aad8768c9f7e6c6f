using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Measurements;

/// <summary>Counts, for a row of settings, how often the rear locks first and how well the road is used.</summary>
internal sealed class SettingSweep
{
    private const int Blocks = 4;

    private readonly SettingQuestion _question;
    private readonly Condition[] _conditions;
    private readonly PerAxle<FrictionGain> _gains;
    private readonly double _ratio;
    private readonly double _maximum;
    private readonly double _slope;

    /// <summary>Prepares a sweep.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="slope">Slope above the knee [–].</param>
    public SettingSweep(SettingQuestion question, double slope)
    {
        (_question, _slope) = (question, slope);
        Vehicle vehicle = question.Vehicle;
        _gains = LockKernel.Gains(vehicle);
        _ratio = vehicle.Hydraulics.Split.RearToFrontPressureRatio;
        _maximum = vehicle.Hydraulics.MaximumPressure.Pascals;
        _conditions = [.. from load in vehicle.LoadCases from surface in question.Surfaces from state in question.States select new Condition(load, surface, state)];
        Covered = LockKernel.Covers(vehicle.Hydraulics);
    }

    public IReadOnlyList<Condition> Conditions => _conditions;

    /// <summary>Whether the quick solution covers the car's valves; otherwise every draw goes through the full balance, and there are fewer.</summary>
    public bool Covered { get; }

    public int DrawsUsed => Covered ? PerBlock * Blocks * _conditions.Length : GeneralDraws * _conditions.Length;

    private int PerBlock => Math.Max(1, _question.Draws / (_conditions.Length * Blocks));

    private int GeneralDraws => Math.Clamp(_question.Draws / _conditions.Length, 50, Math.Max(50, 3000 / _conditions.Length));

    /// <summary>Runs the sweep.</summary>
    /// <param name="knees">Knees in pascals (infinite for none), or null to sweep ratios.</param>
    /// <param name="ratios">Ratios of master pressures; null to sweep knees.</param>
    /// <param name="progress">Told the part done.</param>
    /// <returns>For each condition and setting: rear-first probability and mean efficiency.</returns>
    public (double RearFirst, double Efficiency)[][] Run(double[]? knees, double[]? ratios, IProgress<double>? progress)
    {
        int settings = (knees ?? ratios)!.Length;
        var parts = new (double RearFirst, double Efficiency)[_conditions.Length * Blocks][];
        int done = 0;
        Parallel.For(0, parts.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            parts[i] = Covered ? Block(_conditions[i / Blocks], knees, ratios, settings, i) : General(_conditions[i / Blocks], knees, ratios, settings, i);
            progress?.Report(Interlocked.Increment(ref done) / (double)parts.Length);
        });
        return [.. Enumerable.Range(0, _conditions.Length).Select(c => Enumerable.Range(0, settings).Select(s => (
            Enumerable.Range(0, Blocks).Average(b => parts[c * Blocks + b][s].RearFirst),
            Enumerable.Range(0, Blocks).Average(b => parts[c * Blocks + b][s].Efficiency))).ToArray())];
    }

    /// <summary>The highest rear line pressure that matters: beyond it a knee is never reached.</summary>
    public double HighestKnee() => _conditions.Max(c =>
    {
        LockDraw draw = new LockKernel(_question.Vehicle, c.Load, _gains, _question.Speed.MetersPerSecond).Draw(0.8 * c.State.Front, 0.8 * c.State.Rear, 1, c.Surface.Adhesion * 1.15, c.Surface.Adhesion * 1.15);
        return _ratio * Math.Min(_maximum, draw.Together().FrontPascals);
    });

    private (double RearFirst, double Efficiency)[] Block(Condition condition, double[]? knees, double[]? ratios, int settings, int index)
    {
        var kernel = new LockKernel(_question.Vehicle, condition.Load, _gains, _question.Speed.MetersPerSecond);
        var random = RandomNumbers.Stream(_question.Seed, index);
        double[] rearFirst = new double[settings], efficiency = new double[settings];
        int count = PerBlock;
        double scatter = _question.KneeScatter.Pascals;
        HoldOffValve? hold = _question.Vehicle.Hydraulics.FrontValves.OfType<HoldOffValve>().FirstOrDefault();
        (double opening, double blend) = (hold?.OpeningPressure.Pascals ?? 0, hold?.BlendPressure.Pascals ?? 0);
        for (int i = 0; i < count; i++)
        {
            (CarDraw car, double k1, double k2) = Draw(condition, random);
            LockDraw draw = kernel.Draw(car.Front, car.Rear, car.Height, k1, k2);
            double slip = knees is null ? 0 : scatter * RandomNumbers.Normal(random);
            for (int s = 0; s < settings; s++)
            {
                double knee = knees is null ? double.PositiveInfinity : Math.Max(0, knees[s] + slip);
                (bool rear, double used, _) = draw.First(opening, blend, knee, _slope, ratios is null ? _ratio : ratios[s], _maximum);
                rearFirst[s] += rear ? 1 : 0;
                efficiency[s] += used;
            }
        }

        return [.. rearFirst.Zip(efficiency, (r, e) => (r / count, e / count))];
    }

    private (double RearFirst, double Efficiency)[] General(Condition condition, double[]? knees, double[]? ratios, int settings, int index)
    {
        var random = RandomNumbers.Stream(_question.Seed, index);
        double[] rearFirst = new double[settings], efficiency = new double[settings];
        int count = Math.Max(10, GeneralDraws / Blocks);
        for (int i = 0; i < count; i++)
        {
            (CarDraw car, double k1, double k2) = Draw(condition, random);
            // One surface for both axles: the difference goes into the tyres' own factors.
            double k = Math.Sqrt(k1 * k2);
            Vehicle vehicle = Scaled(_question.Vehicle, car, k1 / k, k2 / k);
            LoadCase load = condition.Load with { CentreOfGravityHeight = condition.Load.CentreOfGravityHeight * car.Height };
            for (int s = 0; s < settings; s++)
            {
                Vehicle set = knees is null ? WithRatio(vehicle, ratios![s]) : double.IsInfinity(knees[s]) ? vehicle : vehicle.WithRearKnee(Pressure.FromPascals(Math.Max(0, knees[s])), _slope);
                var model = new BalanceModel(set, load, _question.Speed);
                bool locks = model.TryFirstLockUp(k, out _, out Axle? first, out double used);
                rearFirst[s] += locks && first == Axle.Rear ? 1 : 0;
                efficiency[s] += locks ? used : 0;
            }
        }

        return [.. rearFirst.Zip(efficiency, (r, e) => (r / count, e / count))];
    }

    private (CarDraw Car, double FrontAdhesion, double RearAdhesion) Draw(Condition condition, Random random)
    {
        (CarDraw car, double? adhesion) = _question.Estimate is { } estimate
            ? estimate.Draw(random, condition.Surface.Name)
            : (new CarDraw(
                Math.Exp(_question.Spread.FrontFriction * RandomNumbers.Normal(random)),
                Math.Exp(_question.Spread.RearFriction * RandomNumbers.Normal(random)),
                Math.Exp(_question.Spread.CentreOfGravityHeight * RandomNumbers.Normal(random))), null);
        double surface = (adhesion ?? condition.Surface.Adhesion) * Math.Exp(condition.Surface.Spread * RandomNumbers.Normal(random));
        double front = surface * Math.Exp(_question.StopScatter * RandomNumbers.Normal(random));
        double rear = surface * Math.Exp(_question.StopScatter * RandomNumbers.Normal(random));
        return (new CarDraw(car.Front * condition.State.Front, car.Rear * condition.State.Rear, car.Height), front, rear);
    }

    private static Vehicle Scaled(Vehicle vehicle, CarDraw car, double frontAdhesion, double rearAdhesion) => vehicle.WithFrictionFactors(car.Front, car.Rear) with
    {
        Tyres = new(
            vehicle.Tyres.Front with { AdhesionFactor = Math.Clamp(vehicle.Tyres.Front.AdhesionFactor * frontAdhesion, 0.3, 2) },
            vehicle.Tyres.Rear with { AdhesionFactor = Math.Clamp(vehicle.Tyres.Rear.AdhesionFactor * rearAdhesion, 0.3, 2) }),
    };

    private static Vehicle WithRatio(Vehicle vehicle, double ratio) => vehicle.Hydraulics.Split is BalanceBarSplit bar
        ? vehicle with { Hydraulics = vehicle.Hydraulics with { Split = bar with { FrontForceShare = ShareFor(bar, ratio) } } }
        : vehicle;

    public static double ShareFor(BalanceBarSplit bar, double ratio)
    {
        double bores = bar.FrontBore / bar.RearBore;
        return Math.Clamp(1 / (1 + ratio / (bores * bores)), 0.2, 0.8);
    }

    /// <summary>One combination of load, surface and state of the brakes.</summary>
    internal sealed record Condition(LoadCase Load, SurfaceCondition Surface, FrictionState State);
}
