using BrakeBalance.Answers;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet.Units;

namespace BrakeBalance.Bench;

/// <summary>What one car says where set-ups are compared: on the bench, side by side in the program, on the live page.</summary>
/// <remarks>
/// Every car goes through the same computations: <see cref="ControlForce"/>, <see cref="BalanceModel"/>, <see cref="Setting"/>; the heat
/// of one stop is ½ m v² shared like the braking forces, taken by the two rings of the axle at 460 J/(kg K) (grey iron, common practice),
/// cooling and pads left out.
/// </remarks>
internal sealed class SetUp
{
    public const string Nowhere = "none", Missing = "not told", Unweighed = "ring not weighed";
    private const string NotReached = "the deceleration is not reached";
    private const double IronJoulesPerKilogramKelvin = 460;

    private static readonly Measure Rise = Measure.Of("rise of temperature", TemperatureDeltaUnit.Kelvin,
        (TemperatureDeltaUnit.Kelvin, "K", 1), (TemperatureDeltaUnit.DegreeFahrenheit, "°F", 1));

    /// <summary>The roads on which set-ups are compared [–].</summary>
    public static IReadOnlyList<double> Roads { get; } = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2];

    private readonly PerAxle<Mass?> _rings;
    private readonly double _joules;
    private readonly Lazy<Setting?> _setting;

    public SetUp(Vehicle vehicle, ChangeConditions conditions, PerAxle<Mass?> rings)
    {
        (Vehicle, _rings) = (vehicle, rings);
        LoadCase load = conditions.LoadCase is { } name ? vehicle.LoadCase(name) : vehicle.LoadCases[0];
        Model = new BalanceModel(vehicle, load);
        double speed = conditions.Speed.MetersPerSecond, rate = conditions.BrakingRate;
        _joules = 0.5 * load.Mass.Kilograms * speed * speed;
        if (Model.AtRate(rate) is { } point)
        {
            PressureAtRate = point.LinePressures.Front;
            RearShare = point.BrakingForces.Rear / (point.BrakingForces.Front + point.BrakingForces.Rear);
        }

        RearFirst = string.Join(", ", vehicle.Conditions.RoadsWith(Roads).Where(adhesion => Model.FirstLockUp(adhesion)?.First == Axle.Rear)
            .Select(adhesion => Invariant.Text($"{adhesion:0.0#}")));
        RearFirst = RearFirst.Length == 0 ? Nowhere : RearFirst;
        _setting = new(() => vehicle.Hydraulics.RearProportioningValve is null ? null : Setting.Of(vehicle));
        if (vehicle.Control is { } parts)
        {
            Control = new ControlForce(Model);
            PedalForce = Control.AtRate(rate)?.PedalForce;
            PedalWithoutAssist = new ControlForce(Model, parts with { Assist = parts.Assist.WithoutEnergy() })
                .AtRate(conditions.RateWithoutAssist)?.PedalForce;
            RunOutPressure = parts.Assist.RunOut is { } runOut ? Control.Cylinder.OutletPressures(runOut.OutputForce).Front : null;
            Travel = Control.AtRate(rate) is { } hard ? Control.TravelAt(hard.Balance.MasterPressure) : null;
        }

        string at = Invariant.Text($"at {rate:0.00} g");
        string stop = Invariant.Text($"disc or drum temperature rise, one stop from "
            + $"{conditions.Speed.KilometersPerHour:0} km/h ({conditions.Speed.MilesPerHour:0} mph)");
        Figures =
        [
            new(ChangeTopic.Balance, "load_case", "Load case of what follows", null, load.Name),
            LockUp("wet", Conditions.WetAdhesion),
            LockUp("dry", Conditions.DryAdhesion),
            new(ChangeTopic.Effort, "front_line_pressure", $"Front line pressure {at}", PressureAtRate,
                "the highest pressure does not reach it"),
            new(ChangeTopic.Effort, "pedal_force_half", "Pedal force at 0.50 g", Control?.AtRate(0.5)?.PedalForce, Told(NotReached)),
            new(ChangeTopic.Effort, "pedal_force", $"Pedal force {at}", PedalForce, Told(NotReached)),
            new(ChangeTopic.Effort, "pedal_force_no_assist",
                Invariant.Text($"Pedal force at {conditions.RateWithoutAssist:0.00} g, no assist"), PedalWithoutAssist,
                Told(NotReached)),
            new(ChangeTopic.Effort, "run_out_pressure", "Front line pressure at run-out of the assist", RunOutPressure,
                Told("no assist to run out")),
            new(ChangeTopic.Travel, "pedal_travel", $"Pedal travel {at}", Travel?.Pad, Missing),
            new(ChangeTopic.Travel, "pedal_travel_left", "Travel left to the floor", Travel?.PadLeft, Missing),
            new(ChangeTopic.Travel, "stroke_left", "Master-cylinder stroke left", Travel?.StrokeLeft, Missing),
            new(ChangeTopic.Balance, "rear_share", $"Rear axle's share of braking {at}",
                RearShare is { } share ? Ratio.FromDecimalFractions(share) : null, NotReached),
            new(ChangeTopic.Balance, "rear_first_adhesions", "Rear axle locks first on adhesions", null, RearFirst),
            new(ChangeTopic.Heat, "front_rise", $"Front {stop}", Warming(Axle.Front), Unweighed),
            new(ChangeTopic.Heat, "rear_rise", $"Rear {stop}", Warming(Axle.Rear), Unweighed),
        ];
    }

    public Vehicle Vehicle { get; }

    public BalanceModel Model { get; }

    public ControlForce? Control { get; }

    public Pressure? PressureAtRate { get; }

    public Force? PedalForce { get; }

    public Force? PedalWithoutAssist { get; }

    public Pressure? RunOutPressure { get; }

    public PedalTravel? Travel { get; }

    public double? RearShare { get; }

    public string RearFirst { get; }

    public Setting? Setting => _setting.Value;

    public Pressure? SafeKnee => Setting?.MarkedLimit?.Knee;

    public bool AnyKneeIsSafe => Setting?.HoldsAtAnySetting == true;

    /// <summary>The figures in the order in which they are shown; the setting has words of its own.</summary>
    public IReadOnlyList<SetUpFigure> Figures { get; }

    public SetUpFigure this[string key] => key == "safe_knee"
        ? new(ChangeTopic.Knee, key, "Safe limit: highest knee that keeps the front first in all conditions", SafeKnee,
            AnyKneeIsSafe ? "any knee" : "no knee is safe")
        : Figures.First(figure => figure.Key == key);

    public TemperatureDelta? Warming(Axle axle) => _rings[axle] is { } ring && RearShare is { } rear
        ? TemperatureDelta.FromKelvins(
            _joules * (axle == Axle.Rear ? rear : 1 - rear) / (2 * ring.Kilograms * IronJoulesPerKilogramKelvin))
        : null;

    /// <summary>A figure as people read it.</summary>
    public static string Text(IQuantity? quantity, string words, UnitSystem units) => quantity switch
    {
        null => words,
        Ratio ratio => Invariant.Text($"{ratio.DecimalFractions * 100:0.0}\u00a0%"),
        _ => MeasureOf(quantity).Text(quantity, units),
    };

    private string Told(string words) => Control is null ? Missing : words;

    private SetUpFigure LockUp(string road, double adhesion) => new(ChangeTopic.Balance, $"first_lock_up_{road}",
        $"First lock-up, {road} road", null, Model.FirstLockUp(adhesion) is { } lockUp
            ? Invariant.Text(
                $"{(lockUp.First switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" })} {lockUp.At.BrakingRate:0.00} g, "
                    + $"efficiency {100 * lockUp.Efficiency:0} %")
            : Nowhere);

    /// <summary>The measure in which a figure is shown; a share has none.</summary>
    public static Measure MeasureOf(IQuantity quantity) => quantity switch
    {
        Pressure => Measure.LinePressure,
        Force => Measure.ControlForce,
        Length => Measure.Travel,
        TemperatureDelta => Rise,
        _ => throw new NotSupportedException(quantity.QuantityInfo.Name),
    };
}

/// <summary>One figure of a set-up.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Key">Its key in JSON.</param>
/// <param name="Name">What it is.</param>
/// <param name="Value">The number; null when there is none.</param>
/// <param name="Words">What stands in place of a missing number, or the answer itself where it is not a number.</param>
internal sealed record SetUpFigure(ChangeTopic Topic, string Key, string Name, IQuantity? Value, string Words);
