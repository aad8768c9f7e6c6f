using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures that can be published for a car, by name, each with its words for readers who do not know the trade.</summary>
/// <remarks>A new figure needs one entry here; export, tests and the list of names follow.</remarks>
public static partial class FigureCatalogue
{
    private const string Press = "a foot that brings pressure to the brakes";
    private const string Set = "a valve or balance bar to set, or rear brakes that need a valve";
    private const string Volumes = "a control with fluid volumes";
    private const string Spins = ": the car can spin";
    private static readonly PlainAxis FrontForce = new("Braking by the front wheels"), RearForce = new("Braking by the rear wheels");
    private static readonly PlainAxis FrontPressure = new("Fluid pressure at the front brakes"),
        RearPressure = new("Fluid pressure at the rear brakes");
    private static readonly PlainAxis Grip = new("Grip of the road", "share of weight"), Braking = new("How hard the car brakes", "g");
    private static readonly PlainAxis GripUsed = new("Share of the grip used"), Seconds = new("Time since the foot touched the pedal");
    private static readonly PlainAxis BendPoint = new("Pressure at which the valve starts to hold back"),
        Passed = new("Share the valve passes on above it", "fraction");
    private static readonly PlainAxis Stop = new("Stop number", "count"), Case = new("Case"), Degrees = new("Temperature");

    /// <summary>All figures, those of the main question first.</summary>
    public static IReadOnlyList<CatalogueEntry> All { get; } =
        [.. Balance(), .. Settings(), .. Foot(), .. Stops(), .. Bends(), .. Heat(), .. Tests(), .. Bench()];

    /// <summary>The figures of a car, each made when it is asked for, so that one that fails need not stop the others.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="plain">Whether they are drawn with few marks and in plain words.</param>
    /// <returns>Each entry with what makes its figure: null when the car lacks something that it needs.</returns>
    public static IReadOnlyList<(CatalogueEntry Entry, Func<Figure?> Make)> For(Vehicle vehicle, UnitSystem units, bool plain = false)
    {
        var study = new CarStudy(vehicle);
        return [.. All.Select(entry => (entry, (Func<Figure?>)(() => entry.Make(study, units) is not { } figure ? null
            : plain ? entry.Plain.Of(figure, study) : figure)))];
    }

    private static string G(double rate) => $"{Finding.Rate(rate)} g";

    private static string Share(double share, Figure figure) => Measure.Percent.Text(share, figure.Units);

    private static string Bar(Pressure pressure, Figure figure) => Measure.LinePressure.Text(pressure, figure.Units);

    internal static string Wheels(Axle? axle) => axle switch
    {
        Axle.Front => "the front wheels lock first",
        Axle.Rear => "the rear wheels lock first",
        _ => "all wheels lock together",
    };
}
