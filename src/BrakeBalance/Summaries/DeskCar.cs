using BrakeBalance.Answers;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet.Units;

namespace BrakeBalance.Summaries;

/// <summary>A car at the question desk: what several questions ask of it, and how its quantities are written.</summary>
/// <param name="vehicle">The car; questions that do not name a load case are answered in its first.</param>
/// <param name="units">The system of units.</param>
/// <param name="known">
/// The answer on the setting when the car is drawn from the ranges of another, which has its band there; null to work it out.
/// </param>
internal sealed class DeskCar(Vehicle vehicle, UnitSystem units, Lazy<Setting>? known = null)
{
    /// <summary>Deceleration of a firm stop, in g [–].</summary>
    public const double Firm = 0.6;

    /// <summary>Pressures of a few bar: thresholds, residual and metering valves.</summary>
    public static readonly Measure Small = Measure.Of(
        "line pressure", PressureUnit.Pascal, (PressureUnit.Bar, "bar", 0.1), (PressureUnit.PoundForcePerSquareInch, "psi", 1));

    private static readonly Measure Bores = Measure.Of(
        "bore", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.1), (LengthUnit.Inch, "in", 0.001));

    private static readonly Measure Flows = Measure.Of(
        "flow",
        VolumeFlowUnit.CubicMeterPerSecond,
        (VolumeFlowUnit.LiterPerMinute, "l/min", 0.1),
        (VolumeFlowUnit.UsGallonPerMinute, "US gal/min", 0.1));

    public Lazy<Setting> Known { get; } = known ?? new(() => Setting.Of(vehicle));

    public Vehicle Car => vehicle;

    public UnitSystem Units => units;

    public BalanceModel Model { get; } = new(vehicle, vehicle.LoadCases[0]);

    /// <summary>Foot and line pressure; null when the file has neither pedal, assist nor master cylinder.</summary>
    public ControlForce? Foot { get; } = vehicle.Control is null ? null : new ControlForce(new BalanceModel(vehicle, vehicle.LoadCases[0]));

    /// <summary>The same without assist.</summary>
    public ControlForce? Bare => Foot is null ? null : Unassisted(Foot);

    /// <summary>Foot and line pressure with the heaviest load, for which help has to be enough.</summary>
    public ControlForce? Laden { get; } = vehicle.Control is null ? null
        : new ControlForce(new BalanceModel(vehicle, vehicle.LoadCases.MaxBy(load => load.Mass.Kilograms)!));

    /// <summary>Which load that is, in words that follow a deceleration; empty where there is only one.</summary>
    public string WhenLaden => vehicle.LoadCases.Length < 2 ? "" : $" in {LoadCase.Listed(Laden!.Model.LoadCase.Name)}";

    public static ControlForce Unassisted(ControlForce foot) =>
        new(foot.Model, foot.Control with { Assist = foot.Control.Assist.WithoutEnergy() });

    public ControlTargets Targets { get; } = new();

    public PoweredAssist? Booster => vehicle.Control?.Assist as PoweredAssist;

    public ProportioningValve? Valve => vehicle.Hydraulics.RearProportioningValve;

    public BalanceBarSplit? Bar => vehicle.Hydraulics.Split as BalanceBarSplit;

    public Setting Answer => Known.Value;

    /// <summary>In which state a rear line pressure holds whose valve follows the load; empty where it does not matter.</summary>
    public string Standing => vehicle.Hydraulics.SensesLoad ? ", the car standing" : "";

    public string Conclusion => SettingWords.Sentence(Answer, units);

    public Pressure Highest => Model.MaximumPressure;

    public ControlForce With(BrakeControl control) => new(Model, control);

    public string Line(Pressure pressure) => Measure.LinePressure.Text(pressure, units);

    public string LowLine(Pressure pressure) => Small.Text(pressure, units);

    public string Push(Force force) => Measure.ControlForce.Text(force, units);

    public string Travel(Length length) => Measure.Travel.Text(length, units);

    public string Bore(Length length) => Bores.Text(length, units);

    public string Flow(VolumeFlow flow) => Flows.Text(flow, units);

    /// <summary>A round force in either system.</summary>
    public Force Round(double newtons, double poundsForce) =>
        units == UnitSystem.Us ? Force.FromPoundsForce(poundsForce) : Force.FromNewtons(newtons);

    /// <summary>Pedal force for a deceleration, in words that follow "takes".</summary>
    public string Effort(ControlForce foot, double rate) => foot.AtRate(rate) is { } point
        ? Push(point.PedalForce)
        : $"more than the pedal's linkage or {Line(Highest)} gives";

    /// <summary>Which axle locks first, as a subject with its verb.</summary>
    public static string LocksFirst(LockUp? lockUp) => lockUp switch
    {
        null => "neither axle locks",
        { First: Axle.Front } => Say($"the front locks first at {lockUp.At.BrakingRate:0.00} g"),
        { First: Axle.Rear } => Say($"the REAR locks first at {lockUp.At.BrakingRate:0.00} g"),
        _ => Say($"both axles lock together at {lockUp.At.BrakingRate:0.00} g"),
    };

    public static string G(double rate) => Say($"{rate:0.0#} g");

    public static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
