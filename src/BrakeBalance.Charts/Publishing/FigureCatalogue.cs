using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures that can be published for a car, by name.</summary>
/// <remarks>A new figure needs one entry here; export, tests and the list of names follow.</remarks>
public static partial class FigureCatalogue
{
    private const string Press = "a foot that brings pressure to the brakes";
    private const string Volumes = "a control with fluid volumes";
    private static readonly PlainAxis FrontForce = new("Braking by the front wheels"), RearForce = new("Braking by the rear wheels");
    private static readonly PlainAxis Grip = new("Grip of the road", "share of weight"), Braking = new("How hard the car brakes", "g");
    private static readonly PlainAxis GripUsed = new("Share of the grip used"), Seconds = new("Time since the foot touched the pedal");
    private static readonly PlainAxis BendPoint = new("Pressure at which the valve starts to hold back"),
        Passed = new("Share the valve passes on above it", "fraction");
    private static readonly PlainAxis Stop = new("Stop number", "count"), Case = new("Case"), Degrees = new("Temperature");

    /// <summary>All figures, those of the main question first.</summary>
    public static IReadOnlyList<CatalogueEntry> All { get; } =
        [.. Balance(), .. Settings(), .. Foot(), .. Stops(), .. Heat(), .. Tests(), .. Bench()];

    /// <summary>The figures of a car, each made when it is asked for, so that one that fails need not stop the others.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Each entry with what makes its figure: null when the car lacks something that it needs.</returns>
    public static IReadOnlyList<(CatalogueEntry Entry, Func<Figure?> Make)> For(Vehicle vehicle, UnitSystem units)
    {
        var study = new CarStudy(vehicle);
        return [.. All.Select(entry => (entry, (Func<Figure?>)(() => entry.Make(study, units))))];
    }

    private static IEnumerable<CatalogueEntry> Balance() =>
    [
        new()
        {
            Name = "brake-forces", Make = (car, units) => BalanceFigures.BrakeForces(car.Light, units: units),
            Plain = new(
                "How a car shares its braking between front and rear. "
                    + "Above the curve of the perfect split the rear wheels lock first, and the car can spin.",
                "Rear against front braking: a curve for the perfect split, this car's line, and a shaded area where the rear locks first.",
                    FrontForce, RearForce),
        },
        new()
        {
            Name = "brake-forces-laden", Make = (car, units) =>
                BalanceFigures.BrakeForces(car.Laden, [0.2, 0.5, 1.1], units: units, id: "brake-forces-laden"),
            Plain = new(
                "The same sharing of the braking with the car fully loaded. "
                    + "The load presses the rear wheels down, so they may brake more before they lock.",
                "Rear against front braking of the loaded car: "
                    + "the perfect split, this car's line, and the area where the rear locks first.", FrontForce, RearForce),
        },
        new()
        {
            Name = "line-pressures", Make = (car, units) => BalanceFigures.LinePressures(car.Light, units: units),
            Plain = new(
                "Fluid pressure at the rear brakes against the front brakes. "
                    + "A valve lets the rear brakes have less once the pressure passes its bend point.",
                "Rear against front fluid pressure, with the line of equal pressures; "
                    + "above the valve's bend point the rear rises more slowly.",
                new("Fluid pressure at the front brakes"), new("Fluid pressure at the rear brakes")),
        },
        new()
        {
            Name = "adhesion-utilisation", Make = (car, units) => BalanceFigures.AdhesionUtilisation(car.Curve, units),
            Plain = new(
                "How much grip each axle needs as the car brakes harder. "
                    + "The axle with the higher curve locks first; new cars must keep the front on top.",
                "Grip needed by front and rear against how hard the car brakes; the dotted line is the perfect split.", Braking,
                    new("Grip the axle needs", "share of weight")),
        },
        new()
        {
            Name = "braking-efficiency", Make = (car, units) => BalanceFigures.BrakingEfficiency(car.Light, units: units),
            Plain = new(
                "How much of the road's grip the car can use before the first wheels lock. "
                    + "A hundred per cent would mean all four wheels lock together.",
                "Share of the road's grip used before wheels lock, from slippery to grippy roads; the dashes tell which wheels lock first.",
                    Grip, GripUsed),
        },
        new()
        {
            Name = "load-cases", Needs = "two load cases", Make = (car, units) =>
                car.Car.LoadCases.Length > 1 ? BalanceFigures.LoadCases(car.Light, car.Laden, units: units) : null,
            Plain = new(
                "One car, empty and loaded. The load moves the curve of the perfect split, but a simple valve does not move with it.",
                "Two curves of the perfect split, empty and loaded, over this car's line; marks show where the first wheels lock.",
                    FrontForce, RearForce),
        },
    ];

    private static IEnumerable<CatalogueEntry> Settings() =>
    [
        new()
        {
            Name = "knee-setting", Needs = "a proportioning valve in the rear line",
            Make = (car, units) => car.Car.Hydraulics.RearProportioningValve is null ? null : KneeFigure.Of(car.Answer, units: units),
            Plain = new(
                "The later the valve starts to hold the rear brakes back, "
                    + "the better the car brakes on average, until the rear wheels begin to lock first.",
                "Share of grip used, rising with the pressure at which the valve starts to hold back, "
                    + "and the hatched range in which the rear locks first.", BendPoint, GripUsed),
        },
        new()
        {
            Name = "safe-settings", Make = (car, units) => SettingFigures.SafeSettings(car.Settings, car.Answer, units),
            Plain = new(
                "Every setting of the rear valve, tried with every load and on every road. "
                    + "Only in the green corner do the front wheels always lock first.",
                "Map of valve settings: low settings are safe everywhere, high ones let the rear wheels lock first.", BendPoint, Passed),
        },
        new()
        {
            Name = "setting-efficiency", Make = (car, units) => SettingFigures.EfficiencyOfSettings(car.Settings, car.Answer, units: units),
            Plain = new(
                "What a safe setting costs: the average share of the road's grip that the brakes use. "
                    + "Blank settings let the rear lock first somewhere.",
                "Map of the average share of grip used over valve settings; darker is better, blank is unsafe.", BendPoint, Passed),
        },
        new()
        {
            Name = "safe-limits", Needs = "a slope at which some knee is safe",
            Make = (car, units) => car.Knees.Any(curve => curve.Item2.Any(point => point.Item2 is not null))
                ? SettingFigures.SafeLimits(car.Knees, units) : null,
            Plain = new(
                "Brake pads never grip exactly as promised. "
                    + "The less they can be trusted, the earlier the valve must start to hold the rear brakes back.",
                "Falling lines: the highest safe setting of the valve for three degrees of doubt about the pads.", Passed, BendPoint),
        },
        new()
        {
            Name = "before-after", Needs = "a valve or balance bar that can be set safely",
            Make = (car, units) => car.AtAdvice is { } advised ? ComparisonFigures.BeforeAfter(car.Light, advised, units: units) : null,
            Plain = new(
                "Before: the car as it is. After: the recommended setting. Triangles mark roads where the rear locks first: dangerous.",
                "Two lines, before and after, of the share of grip used on roads from slippery to grippy.", Grip, GripUsed),
        },
    ];

    private static IEnumerable<CatalogueEntry> Foot() =>
    [
        new()
        {
            Name = "effort", Needs = "a pedal and master cylinder in the file",
            Make = (car, units) => car.Control is { } control
                ? FootFigures.Effort(car.Light, ControlVariants.Assists(control), units: units) : null,
            Plain = new(
                "How hard the foot must press. The booster does most of the work until its help ends; "
                    + "from there every step harder is the driver's own.",
                "Pedal force against how hard the car brakes, with and without the booster's help.", Braking,
                    new("Force of the foot on the pedal")),
        },
        new()
        {
            Name = "reserve", Needs = Volumes,
            Make = (car, units) => car.ControlWithVolumes is not null
                ? FootFigures.Reserve(new ControlForce(car.Light), units: units) : null,
            Plain = new(
                "When the engine stops, the booster has help left for a few presses of the pedal. "
                    + "Each press uses some; the next one is helped less far.",
                "Shrinking bars: how hard the car can brake with the booster still helping, press by press, after the engine has stopped.",
                new("Press of the pedal after the engine has stopped"), new("How hard the car brakes while the booster still helps", "g")),
        },
        new()
        {
            Name = "travel", Needs = Volumes, Make = Travel,
            Plain = new(
                "Where the pedal's way goes: gaps that close, parts that stretch, hoses that swell. "
                    + "What is left above the floor is the reserve.",
                "Stacked bars of pedal movement by cause, below a line at the floor.", new("How hard the car brakes"),
                    new("Way of the pedal")),
        },
        new()
        {
            Name = "bore-ratio", Needs = Volumes,
            Make = (car, units) => car.ControlWithVolumes is { } control
                ? FootFigures.ChoiceMap(car.Light, "the present assist", control.Assist, units: units) : null,
            Plain = new(
                "Choosing a pedal and a master cylinder. "
                    + "Too narrow a cylinder makes a long pedal, too wide a one a hard pedal; both must fit together.",
                "Map of cylinder width against pedal leverage, with the area that fits and the reasons why the rest does not.",
                new("Width of the master cylinder"), new("Leverage of the pedal", "to 1")),
        },
        new()
        {
            Name = "failures", Needs = Volumes,
            Make = (car, units) => car.ControlWithVolumes is not null
                ? FootFigures.FailureDistances(FailureAnalysis.Of(car.Car, car.Light.LoadCase), car.Car.Name, units: units) : null,
            Plain = new(
                "How far the car goes before it stops when something has failed. "
                    + "Distances include the driver's reaction time; no wheel is locked.",
                "Stacked bars of stopping distance for the sound car and for each failure.", Case, new("Distance to stop")),
        },
    ];

    private static Figure? Travel(CarStudy car, UnitSystem units)
    {
        if (car.ControlWithVolumes is not { } control)
        {
            return null;
        }

        var force = new ControlForce(car.Light);
        (string, PedalTravel)[] cases = [.. new[] { 0.3, 0.5, 0.7 }
            .Select(rate => (Rate: rate, Travel: force.AtRate(rate) is { } at ? force.TravelAt(at.Balance.MasterPressure) : null))
            .Where(item => item.Travel is not null)
            .Select(item => (FormattableString.Invariant($"{item.Rate:0.0} g"), item.Travel!))];
        return cases.Length == 0 ? null : FootFigures.Travel(cases, control.Pedal.AvailableTravel, car.Car.Name, units: units);
    }

    private static IEnumerable<CatalogueEntry> Stops() =>
    [
        new()
        {
            Name = "stop-speed", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.SpeedOverTime(car.Emergency, units: units) : null,
            Plain = new(
                "An emergency stop on a dry road, second by second: "
                    + "the speed of the car and of its wheels. A locked wheel no longer turns.",
                "Speed of car and wheels against time in an emergency stop.", Seconds, new("Speed")),
        },
        new()
        {
            Name = "stop-deceleration", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.DecelerationOverTime(car.Emergency, units: units) : null,
            Plain = new(
                "How strongly the car slows down during an emergency stop. "
                    + "It takes a moment for the pressure to rise, and locked wheels slow the car less.",
                "Slowing of the car against time in an emergency stop.", Seconds, new("How strongly the car slows down")),
        },
        new()
        {
            Name = "stop-loads", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.LoadsOverTime(car.Emergency, units: units) : null,
            Plain = new(
                "Braking presses the front wheels down and lifts the rear. "
                    + "That is why the rear brakes must do less the harder the car slows.",
                "Weight on front and rear wheels, and their braking, against time in an emergency stop.", Seconds, new("Force")),
        },
        new()
        {
            Name = "force-course", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.ForceCourse(car.Light, car.Emergency, CarStudy.Dry, units: units) : null,
            Plain = new(
                "The path of one emergency stop in the picture of front and rear braking. "
                    + "Where wheels lock, the path leaves the car's line.",
                "Rear against front braking during a stop, over the perfect split and this car's line.", FrontForce, RearForce),
        },
        new()
        {
            Name = "plan", Needs = Press,
            Make = (car, units) => car.CanStop
                ? StopFigures.PlanView(car.YawStops, car.Car.Wheelbase, car.PlanMoment, units) : null,
            Plain = new(
                "Three stops seen from above on a road that falls off slightly to one side. "
                    + "With the front locked the car slides straight; with the rear locked it spins.",
                "Three cars from above with their paths: front wheels locked, rear wheels locked, all wheels rolling.",
                    new("Way along the road"), new("Across the road, one lane for each case")),
        },
        new()
        {
            Name = "headings", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.Headings(car.YawStops, units) : null,
            Plain = new(
                "How far the car has turned from its way, with the steering held still. At ninety degrees it slides sideways.",
                "Angle the car has turned against time, for front locked, rear locked and rolling wheels.", Seconds,
                    new("How far the car has turned")),
        },
        new()
        {
            Name = "distances", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.Distances(car.Comparison, units) : null,
            Plain = new(
                "Stopping distance of three set-ups of the car, "
                    + "with locked wheels, with wheels kept just short of locking, and the best any system could do.",
                "Bars of stopping distance for three set-ups of the car and three ways of braking.", new("Set-up"),
                    new("Distance to stop")),
        },
        new()
        {
            Name = "bend", Needs = "a foot that brings pressure to brakes that can lock a wheel", Make = (car, units) =>
                car.CanStop && car.Light.FirstLockUp(CarStudy.Dry) is not null ? BendFigures.Braking(car.Bends, units) : null,
            Plain = new(
                "A tyre that is busy cornering has less grip left for braking. The faster the bend, the sooner a wheel slides, and "
                    + "the sooner one end of the car lets go.",
                "Braking possible before a wheel slides and before one end of the car lets go, falling as the car corners harder.",
                new("Sideways pull in the bend", "g"), new("Braking at that moment", "g")),
        },
        new()
        {
            Name = "bend-knee", Needs = "a foot that brings pressure to brakes that can lock a wheel", Make = (car, units) =>
                car.CanStop && car.Light.FirstLockUp(CarStudy.Dry) is not null ? BendFigures.SafeKnee(car.Bends, units) : null,
            Plain = new(
                "Braking while turning in. Above the line the rear wheels let go first and the car spins; below it the front runs "
                    + "wide, which is safer.",
                "What the rear wheels allow while the car corners: the limit of the valve, or the side grip that is left.",
                new("Sideways pull in the bend", "g"), new("Limit of the rear wheels")),
        },
        new()
        {
            Name = "slip-curves",
            Make = (_, units) => StopFigures.SlipCurves(
                [PublishedSlipCurves.DryAsphalt, PublishedSlipCurves.WetAsphalt, PublishedSlipCurves.Snow, PublishedSlipCurves.Ice],
                    Force.FromKilonewtons(3.5), units),
            Plain = new(
                "A tyre grips best while it slides a little. Locked, it grips less and no longer steers; on wet roads the loss is largest.",
                "Grip against sliding of the wheel on four kinds of road: a steep rise to a peak, then a fall towards the locked wheel.",
                new("How much the wheel slides: 0 rolls, 100 is locked"), new("Grip of the tyre", "share of weight")),
        },
    ];

    private static IEnumerable<CatalogueEntry> Heat() =>
    [
        new()
        {
            Name = "heat-stops", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.TemperatureByStop(car.Heat.Result, car.Heat.Brakes, units) : null,
            Plain = new(
                "Brakes turn speed into heat. Stop after stop they get hotter, "
                    + "and old fluid that boils gives a pedal that goes to the floor.",
                "Temperatures of brakes and fluid climbing stop by stop, with the boiling points marked.", Stop, Degrees),
        },
        new()
        {
            Name = "heat-drift", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.Drift(car.Heat.Result, units) : null,
            Plain = new(
                "Hot brakes grip differently. As front and rear change by different amounts, "
                    + "the balance of the car moves while it is being driven.",
                "Share of the front brakes, strength of each brake and slowing of the car, stop by stop.", Stop, new("Share")),
        },
        new()
        {
            Name = "heat-time", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.OverTime(car.Heat.Result, units) : null,
            Plain = new(
                "The same stops over time. Discs and drums heat in seconds and cool in minutes; the fluid follows slowly and stays warm.",
                "Saw-tooth temperatures of discs or drums over a slow rise of the fluid.", new("Time"), Degrees),
        },
    ];
}
