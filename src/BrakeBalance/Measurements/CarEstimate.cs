using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>What test stops and lock events say of the car.</summary>
public sealed record CarEstimate
{
    private readonly PosteriorSample _posterior;
    private readonly StopModel _model;

    internal CarEstimate(PosteriorSample posterior, StopModel model) => (_posterior, _model) = (posterior, model);

    /// <summary>
    /// The quantities estimated: friction front and rear, height of the centre of gravity in the first load case, adhesion of each surface.
    /// </summary>
    public required IReadOnlyList<EstimatedParameter> Parameters { get; init; }

    /// <summary>Correlation of the quantities after the stops [–], in the order of <see cref="Parameters"/>.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Correlation { get; init; }

    /// <summary>In words: what the stops tell well, what they hardly tell, and what they cannot tell apart.</summary>
    public required IReadOnlyList<string> Identifiability { get; init; }

    /// <summary>Relative scatter of the deceleration about the model [–].</summary>
    public required Interval<double> DecelerationScatter { get; init; }

    /// <summary>How many stops were used.</summary>
    public required int StopsUsed { get; init; }

    /// <summary>Stops, or parts of them, that could not be used, by line of the log and with the reason.</summary>
    public required IReadOnlyList<LogProblem> NotUsed { get; init; }

    /// <summary>Each stop in use beside what the fitted car foretells, with its weight.</summary>
    public IReadOnlyList<StopWeight> Weights { get; init; } = [];

    /// <summary>
    /// Why the stops cannot be of this car as they are written, in sentences; empty when they fit. No setting follows from stops in doubt.
    /// </summary>
    public IReadOnlyList<string> Doubts { get; init; } = [];

    /// <summary>
    /// Largest difference between the interval bounds given and those of the Metropolis chains, in standard deviations [–]; null when
    /// not checked.
    /// </summary>
    public double? DifferenceFromChains { get; init; }

    /// <summary>Whether the chains agreed among themselves (scale reduction below 1.05); null when not checked.</summary>
    public bool? ChainsAgree { get; init; }

    /// <summary>The highest adhesion that the stops tell of, lower end of its interval [–]: beyond it they support nothing.</summary>
    public double HighestAdhesionSeen => Parameters
        .Where(parameter => parameter.Name.StartsWith("adhesion, ", StringComparison.Ordinal))
        .Select(parameter => parameter.Posterior.Low)
        .DefaultIfEmpty(0)
        .Max();

    /// <summary>The car with the estimated friction and height of the centre of gravity.</summary>
    /// <returns>A copy of the car the stops were made with.</returns>
    public Vehicle Apply() => ApplyTo(_model.Vehicle);

    /// <summary>The same of a copy of the car that was changed since: what was found goes with what its description says.</summary>
    internal Vehicle ApplyTo(Vehicle car)
    {
        var middle = new CarDraw(_posterior.Interval(d => Math.Exp(d[0])).Estimate, _posterior.Interval(d => Math.Exp(d[1])).Estimate,
            _posterior.Interval(d => Math.Exp(d[2])).Estimate);
        Vehicle vehicle = car.WithFrictionFactors(middle.Front, middle.Rear);
        return vehicle with
        {
            LoadCases = [
            .. vehicle.LoadCases.Select(l => l with { CentreOfGravityHeight = l.CentreOfGravityHeight * middle.Height })]
        };
    }

    /// <summary>Height of the centre of gravity in the first load case.</summary>
    public Interval<Length> CentreOfGravityHeight => Parameters[2].Posterior.Select(m => Length.FromMeters(m));

    /// <summary>
    /// Deceleration and brake forces foretold for a front line pressure, each with its 90 % interval; lock-up is left aside.
    /// </summary>
    /// <param name="stop">Pressures, load case and turns; the rear line pressure follows from the valve when it is not given.</param>
    /// <returns>The forecast; null when the stop gives no line pressure or names a load case that the car does not have.</returns>
    public StopForecast? Forecast(TestStop stop)
    {
        if (_model.Prepare(stop with { Locked = null }, out _) is not { } prepared)
        {
            return null;
        }

        const int least = 250;
        int step = Math.Max(1, _posterior.Draws.Length / least);
        (double Rate, double Front, double Rear)[] shown =
            [.. _posterior.Draws.Where((_, i) => i % step == 0).Select(d => _model.Forces(prepared, d))];
        Interval<double> Of(Func<(double Rate, double Front, double Rear), double> part)
        {
            double[] sorted = [.. shown.Select(part).Order()];
            return new Interval<double>(sorted[sorted.Length / 2], sorted[sorted.Length / 20], sorted[^(sorted.Length / 20 + 1)]);
        }

        return new StopForecast(
            BrakingRate: Of(s => s.Rate),
            FrontForce: Of(s => s.Front).Select(n => Force.FromNewtons(n)),
            RearForce: Of(s => s.Rear).Select(n => Force.FromNewtons(n)));
    }

    internal PosteriorSample Posterior => _posterior;

    internal StopModel Model => _model;

    internal (CarDraw Car, double? Adhesion) Draw(Random random, string surface)
    {
        MathNet.Numerics.LinearAlgebra.Vector<double> theta = _posterior.Draws[random.Next(_posterior.Draws.Length)];
        return (_model.Car(theta), _model.Adhesion(theta, surface));
    }
}
