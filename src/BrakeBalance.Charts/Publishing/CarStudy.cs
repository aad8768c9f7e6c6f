using System.Runtime.CompilerServices;

namespace BrakeBalance.Charts.Publishing;

/// <summary>What the figures of one car have in common, each part computed when the first figure asks for it.</summary>
internal sealed class CarStudy
{
    /// <summary>Speed from which stops are shown.</summary>
    public static readonly Speed From = Speed.FromKilometersPerHour(100);

    /// <summary>Adhesion of the dry road of the stops [–].</summary>
    public const double Dry = Conditions.DryAdhesion;

    private static readonly double[] Slopes = [.. Enumerable.Range(0, 9).Select(i => 0.1 * i)];

    // Many figures ask for the answer of one car.
    private static readonly ConditionalWeakTable<Vehicle, Setting> Answers = [];

    private readonly Lazy<UtilisationCurve> _curve;
    private readonly Lazy<Setting> _setting;
    private readonly Lazy<IReadOnlyList<SettingOutcome>> _settings;
    private readonly Lazy<IReadOnlyList<(double, IReadOnlyList<(double, Pressure?)>)>> _knees;
    private readonly Lazy<BalanceModel?> _advised;
    private readonly Lazy<bool> _canStop;
    private readonly Lazy<StopSetup> _setup;
    private readonly Lazy<StopResult> _emergency;
    private readonly Lazy<IReadOnlyList<(string Name, YawResult Stop)>> _yaw;
    private readonly Lazy<IReadOnlyList<StopComparisonRow>> _rows;
    private readonly Lazy<(PerAxle<ThermalBrake> Brakes, HeatResult Result)> _fade;
    private readonly Lazy<BendMap> _bends;
    private double? _moment;

    /// <summary>A study of a car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="load">The load case of figures of one, by its place; the first, as figures are published, unless said.</param>
    public CarStudy(Vehicle car, int load = 0)
    {
        Car = car;
        Light = new BalanceModel(car, car.LoadCases[load]);
        Laden = new BalanceModel(car, car.LoadCases[^1]);
        _curve = new(() => UtilisationCurve.Of(car)[load]);
        Conditions coarse = car.Conditions with { AdhesionSteps = 16 };
        _setting = new(() => Answers.GetValue(car, one => Setting.Of(one)));
        _settings = new(() => SettingMap.Of(Answer));
        _knees = new(() => [.. new[] { 0, 0.08, 0.15 }.Select(spread =>
            (spread, (IReadOnlyList<(double, Pressure?)>)[.. Slopes.Select(slope =>
            (slope, SettingSearch.Limit(car, coarse with { FrictionSpread = new(spread, spread) }, slope).Knee))]))]);
        _advised = new(Advised);
        _canStop = new(() => car.LoadCases.All(load => StopSetup.WhyNoStop(car, load) is null));
        _setup = new(() => StopSetup.From(car, car.LoadCases[load], Dry));
        _emergency = new(() => StraightStop.Run(Setup.Car, Setup.Emergency, Setup.BuildUp, From));
        _yaw = new(() => YawStop.EachAxleLocked(Setup, From));
        (string Name, Vehicle Car)[] compared =
        [
            ("Present setting", car),
            .. car.Hydraulics.RearValves.All(valve => valve is MeteringValve) ? [] : ((string, Vehicle)[])
                [("Without the rear valve", car with { Hydraulics = car.Hydraulics.WithoutRearProportioning() })],
            ("Rear friction 15 % up", car.WithFrictionFactors(1, 1.15)),
        ];
        _rows = new(() => Answer.Compare(
            compared.Where(row => StopSetup.WhyNoStop(row.Car, car.LoadCases[load]) is null), car.LoadCases[load].Name, Dry, From));
        _fade = new(Fade);
        _bends = new(() => TrailBraking.Map(car, car.LoadCases[load], Dry, From));
    }

    public Vehicle Car { get; }

    /// <summary>The car in the load case of figures of one.</summary>
    public BalanceModel Light { get; }

    /// <summary>The car in its last load case.</summary>
    public BalanceModel Laden { get; }

    /// <summary>The present control; null when the file says nothing of what lies between foot and line pressure.</summary>
    public BrakeControl? Control => Car.Control;

    /// <summary>The control of cars whose circuits' volumes are known.</summary>
    public BrakeControl? ControlWithVolumes => Car.Control is { Circuits: not null } control ? control : null;

    /// <summary>Adhesion utilised in the load case of figures of one.</summary>
    public UtilisationCurve Curve => _curve.Value;

    /// <summary>Where to set the valve or the balance bar.</summary>
    public Setting Answer => _setting.Value;

    /// <summary>A map of knees and slopes.</summary>
    public IReadOnlyList<SettingOutcome> Settings => _settings.Value;

    /// <summary>The safe limits over slope, for several spreads of friction.</summary>
    public IReadOnlyList<(double, IReadOnlyList<(double, Pressure?)>)> Knees => _knees.Value;

    /// <summary>The car set as recommended, where that is known already; null to ask for the answer.</summary>
    public Vehicle? Recommended { get; init; }

    /// <summary>The car as recommended; null when there is none, or none is needed.</summary>
    public BalanceModel? AtAdvice => _advised.Value;

    /// <summary>Whether the foot brings pressure to the brakes, in every load case.</summary>
    public bool CanStop => _canStop.Value;

    /// <summary>The car ready to stop on a dry road.</summary>
    public StopSetup Setup => _setup.Value;

    public StopResult Emergency => _emergency.Value;

    /// <summary>Stops with one axle locked, and with none.</summary>
    public IReadOnlyList<(string Name, YawResult Stop)> YawStops => _yaw.Value;

    /// <summary>The moment at which these are seen from above, in seconds: the end of the last one unless another was asked for.</summary>
    public double PlanMoment => _moment ?? YawStops.Max(stop => stop.Stop.Duration.Seconds);

    /// <summary>Three set-ups side by side.</summary>
    public IReadOnlyList<StopComparisonRow> Comparison => _rows.Value;

    /// <summary>Repeated stops that heat the brakes.</summary>
    public (PerAxle<ThermalBrake> Brakes, HeatResult Result) Heat => _fade.Value;

    /// <summary>Braking in bends on a dry road.</summary>
    public BendMap Bends => _bends.Value;

    /// <summary>What was measured on the car; null when nothing was.</summary>
    public OwnMeasurements? Own => OwnMeasurements.Of(Car);

    /// <summary>The same study, its stops seen from above at a moment.</summary>
    public CarStudy At(double seconds)
    {
        var study = (CarStudy)MemberwiseClone();
        study._moment = seconds;
        return study;
    }

    private BalanceModel? Advised() => (Recommended
        ?? (Answer is { Recommended: not null, Reach: not SettingReach.NotNeeded, Variable: not SettingVariable.AddedKnee } answer
            ? answer.RecommendedVehicle : null)) is { } car ? new BalanceModel(car, car.LoadCase(Light.LoadCase.Name)) : null;

    private (PerAxle<ThermalBrake> Brakes, HeatResult Result) Fade()
    {
        var setup = StopSetup.From(Car, Car.LoadCases[^1], Dry);
        return (setup.Heat, BrakeHeat.Run(setup.Car, setup.Heat, HeatCycle.TypeOne(setup.MaximumSpeed), Temperature.FromDegreesCelsius(20),
            setup.Fluid));
    }
}
