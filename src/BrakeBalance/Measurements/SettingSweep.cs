using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>Counts, for a row of settings, how often the rear locks first and how well the road is used.</summary>
internal sealed class SettingSweep
{
    private const int Blocks = 4;
    private const int SpeedsTried = 3;

    // How well the road is used scatters far less than which axle locks first.
    private const int DrawsToAWhole = 8;

    private readonly SettingQuestion _question;
    private readonly Condition[] _conditions;
    private readonly IReadOnlyList<Speed> _speeds;
    private readonly PerAxle<FrictionGain> _gains;
    private readonly double _slope;

    /// <summary>Prepares a sweep.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="slope">Slope above the knee [–].</param>
    public SettingSweep(SettingQuestion question, double slope)
    {
        (_question, _slope) = (question, slope);
        Vehicle vehicle = question.Vehicle;
        _gains = FrictionGain.Of(vehicle);
        _speeds = question.Speeds.Of(vehicle, SpeedsTried);
        _conditions = [.. from load in vehicle.Conditions.LoadCasesOf(vehicle)
                          let kernels = _speeds.Select(speed => new BalanceKernel(vehicle, load, speed.MetersPerSecond)).ToArray()
                          from surface in question.Surfaces
                          from state in question.States
                          select new Condition(load, surface, state, kernels)];
    }

    public int DrawsUsed => PerBlock * Blocks * _conditions.Length * _speeds.Count;

    private int PerBlock => Math.Max(1, _question.Draws / (_conditions.Length * Blocks * _speeds.Count));

    /// <summary>Runs the sweep.</summary>
    /// <param name="knees">Knees in pascals (infinite for none); null for the car's own valves.</param>
    /// <param name="ratios">Ratios of master pressures; null for the car's own, needed without knees.</param>
    /// <param name="progress">Told the part done.</param>
    /// <returns>For each condition, speed and setting: rear-first probability and mean efficiency.</returns>
    public SweepCell[][][] Run(double[]? knees, double[]? ratios, IProgress<double>? progress)
    {
        int settings = (knees ?? ratios)!.Length, perCondition = Blocks * _speeds.Count;
        double[]? rising = knees is null ? null : [.. knees.Order()];
        int[] places = [.. Enumerable.Range(0, settings).Select(s => rising is null ? s : Array.IndexOf(rising, knees![s]))];
        var parts = new SweepCell[_conditions.Length * perCondition][];
        int done = 0;
        Parallel.For(0, parts.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            (int condition, int speed, int stream) = (i / perCondition, i % perCondition / Blocks, i / perCondition * Blocks + i % Blocks);
            parts[i] = Block(_conditions[condition], speed, rising, ratios, settings, stream);
            progress?.Report(Interlocked.Increment(ref done) / (double)parts.Length);
        });
        SweepCell Cell(int condition, int speed, int setting)
        {
            ArraySegment<SweepCell[]> blocks = new(parts, condition * perCondition + speed * Blocks, Blocks);
            int place = places[setting];
            return new(blocks.Average(block => block[place].RearFirst), blocks.Average(block => block[place].Efficiency));
        }

        return [.. Enumerable.Range(0, _conditions.Length).Select(c =>
            Enumerable.Range(0, _speeds.Count).Select(v => Enumerable.Range(0, settings).Select(s => Cell(c, v, s)).ToArray()).ToArray())];
    }

    /// <summary>How one setting does in a condition.</summary>
    public ConditionOutcome Outcome(int condition, SweepCell[][] cells, int setting)
    {
        int worst = Enumerable.Range(0, _speeds.Count).MaxBy(v => cells[v][setting].RearFirst);
        Condition of = _conditions[condition];
        (double rearFirst, double efficiency) = (cells[worst][setting].RearFirst, cells.Average(v => v[setting].Efficiency));
        return new(of.Load.Name, of.Surface.Name, of.State.Name, rearFirst, efficiency, _speeds[worst]);
    }

    /// <summary>The highest rear line pressure that matters: beyond it a knee is never reached.</summary>
    public double HighestKnee() => _conditions.Max(c => c.Kernels.Max(kernel =>
    {
        CarGains car = new(_gains.Front.At(0.8 * c.State.Front), _gains.Rear.At(0.8 * c.State.Rear), 1);
        double front = kernel.Together(car, c.Surface.Adhesion * 1.15, c.Surface.Adhesion * 1.15).FrontPascals;
        return kernel.Ratio * Math.Min(kernel.MaximumPascals, front);
    }));

    // The same draws at every speed and for every setting, so that differences are not chance.
    private SweepCell[] Block(Condition condition, int speed, double[]? knees, double[]? ratios, int settings, int stream)
    {
        BalanceKernel kernel = condition.Kernels[speed];
        ValveLaw[] laws = [.. kernel.Laws];
        var random = RandomNumbers.Stream(_question.Seed, stream);
        double[] rearFirst = new double[settings], efficiency = new double[settings];
        var found = new KernelLock[settings];
        int count = PerBlock, wholes = 0;
        double scatter = _question.KneeScatter.Pascals;
        for (int i = 0; i < count; i++)
        {
            (CarDraw draw, double k1, double k2) = Draw(condition, random);
            CarGains car = new(_gains.Front.Drawn(draw.Front), _gains.Rear.Drawn(draw.Rear), draw.Height);
            (AxleLimit front, AxleLimit rear) = kernel.Limits(k1, k2);
            double limit = kernel.LimitNewtons(front, rear, car.Height), slip = knees is null ? 0 : scatter * RandomNumbers.Normal(random);
            KernelLock First(int setting)
            {
                if (knees is not null)
                {
                    laws[kernel.Setting] = ValveLaw.AboveKnee(Math.Max(0, knees[setting] + slip), _slope);
                }

                return kernel.First(car, laws, ratios?[setting] ?? kernel.Ratio, front, rear, limit);
            }

            // More rear braking never makes the front lock first again: where the rear comes first from tells all. Where both would lock
            // together it is near, exactly so for a car without other valves.
            (double atFront, double atRear) = kernel.Together(car, k1, k2);
            double near = knees is null ? atRear / atFront : (atRear - _slope * kernel.Ratio * atFront) / (1 - _slope) - slip;
            int at = Array.BinarySearch(knees ?? ratios!, near);
            int from = 0, to = settings, tried = Math.Min(at < 0 ? ~at : at, settings - 1);
            for (bool isNear = true; from < to; isNear = false)
            {
                bool isRear = First(tried).Order == LockOrder.Rear;
                (from, to) = isRear ? (from, tried) : (tried + 1, to);
                tried = !isNear ? (from + to) / 2 : isRear ? Math.Max(0, to - 1) : from;
            }

            for (int s = from; s < settings; s++)
            {
                rearFirst[s]++;
            }

            if (i % DrawsToAWhole != 0)
            {
                continue;
            }

            wholes++;
            if (knees is not null)
            {
                kernel.First(car, laws, [.. knees.Select(knee => Math.Max(0, knee + slip))], _slope, front, rear, found);
            }

            for (int s = 0; s < settings; s++)
            {
                efficiency[s] += (knees is null ? First(s) : found[s]).Efficiency;
            }
        }

        return [.. rearFirst.Zip(efficiency, (r, e) => new SweepCell(r / count, e / wholes))];
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

    /// <summary>One combination of load, surface and state of the brakes, prepared for each speed.</summary>
    internal sealed record Condition(LoadCase Load, SurfaceCondition Surface, BrakeState State, BalanceKernel[] Kernels);
}

/// <summary>What a sweep found for one setting in one condition at one speed.</summary>
/// <param name="RearFirst">Probability that the rear locks first [–].</param>
/// <param name="Efficiency">Mean braking efficiency [–].</param>
internal sealed record SweepCell(double RearFirst, double Efficiency);
