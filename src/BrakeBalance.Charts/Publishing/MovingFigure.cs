using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures of the catalogue with controls, where their picture changes with anything that can be set.</summary>
public static class MovingFigure
{
    private const int Steps = 41;

    /// <summary>What moves which figure; the slider that an animation follows comes first.</summary>
    private static readonly Dictionary<string, Moves> Movable = new()
    {
        ["brake-forces"] = Moves.Setting | Moves.Load,
        ["brake-forces-laden"] = Moves.Setting,
        ["line-pressures"] = Moves.Setting | Moves.Load,
        ["adhesion-utilisation"] = Moves.Setting | Moves.Load,
        ["braking-efficiency"] = Moves.Setting | Moves.Load,
        ["load-cases"] = Moves.Setting,
        ["before-after"] = Moves.Setting | Moves.Load,
        ["effort"] = Moves.Bore | Moves.Load,
        ["reserve"] = Moves.Load,
        ["travel"] = Moves.Bore | Moves.Load,
        ["failures"] = Moves.Bore | Moves.Load,
        ["stop-speed"] = Moves.Setting | Moves.Load,
        ["stop-deceleration"] = Moves.Setting | Moves.Load,
        ["stop-loads"] = Moves.Setting | Moves.Load,
        ["force-course"] = Moves.Setting | Moves.Load,
        ["plan"] = Moves.Moment,
        ["headings"] = Moves.Load,
        ["distances"] = Moves.Load,
        ["bend"] = Moves.Setting | Moves.Load,
        ["heat-drift"] = Moves.Setting,
    };

    [Flags]
    private enum Moves
    {
        Setting = 1,
        Bore = 2,
        Moment = 4,
        Load = 8,
    }

    /// <summary>Names of the figures that something moves.</summary>
    public static IEnumerable<string> Names => Movable.Keys;

    /// <summary>A figure with its controls; as they stand at the start it is the published figure.</summary>
    /// <param name="entry">The figure.</param>
    /// <param name="vehicle">The car; it must have what the figure needs.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="plain">Whether it speaks in plain words.</param>
    /// <param name="style">The publisher's credit line and numbers; null for the usual ones.</param>
    /// <param name="id">The explorable's short name.</param>
    /// <param name="settings">The settings to go through; null for those of the car's own answer.</param>
    /// <returns>The explorable, each state of it one figure; null when nothing moves this figure of this car.</returns>
    public static Explorable? Of(
        CatalogueEntry entry, Vehicle vehicle, UnitSystem units, bool plain = false, HouseStyle? style = null, string id = "moving",
        SettingSlider? settings = null)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(vehicle);
        Moves moves = Movable.GetValueOrDefault(entry.Name);
        List<Control> controls = [];
        Func<int, Vehicle> car = _ => vehicle;
        double[] moments = [];
        CarStudy own = new(vehicle);
        if (moves.HasFlag(Moves.Setting))
        {
            settings ??= SettingSlider.Of(own.Answer, Steps, units);
            Vehicle[] cars = settings.Cars(vehicle);
            controls.Add(settings.Control(vehicle, units));
            car = at => cars[at];
        }
        else if (moves.HasFlag(Moves.Bore) && vehicle.Control is not null)
        {
            (Control control, Vehicle[] cars) = FootExplorables.Bores(vehicle, units);
            controls.Add(control);
            car = at => cars[at];
        }
        else if (moves.HasFlag(Moves.Moment) && own.CanStop)
        {
            moments = [.. Enumerable.Range(0, Steps).Select(i => own.PlanMoment * i / (Steps - 1))];
            controls.Add(Control.Clock("moment", moments, 120, units) with { Start = Steps - 1 });
        }

        bool slides = controls is [{ Settings.Count: > 1 }];
        if (!slides)
        {
            controls.Clear();
        }

        if (moves.HasFlag(Moves.Load) && vehicle.LoadCases.Length > 1)
        {
            controls.Add(Control.Choice("load", "Load", vehicle.LoadCases.Select(load => load.Name)));
        }

        if (controls.Count == 0)
        {
            return null;
        }

        if (plain)
        {
            controls = [.. controls.Select(one => one with
            {
                Label = PlainText.Label(one.Label), Settings = [.. one.Settings.Select(PlainText.Load)],
            })];
        }

        if (style is not null)
        {
            controls = [.. controls.Select(one => one with { Settings = [.. one.Settings.Select(style.Numbers)] })];
        }

        Figure Made(int slide, int load)
        {
            CarStudy study = moments.Length > 0 ? own.At(moments[slide])
                : new CarStudy(slides ? car(slide) : vehicle, load) { Recommended = settings?.RecommendedOf(vehicle) };
            return entry.Make(study, units) is { } figure
                ? FigureText.Credited(entry.Marked(plain ? entry.Plain.Of(figure, study) : figure, vehicle), vehicle, style)
                : throw new ArgumentException($"This needs {entry.Needs}, which the car has not when set like this.");
        }

        var windows = new ConcurrentDictionary<int, IReadOnlyList<Figure>>();
        int start = controls[0].Start, last = controls[0].Settings.Count - 1;
        int[] samples = slides ? [.. new[] { start, 0, last }.Distinct()] : [];
        IReadOnlyList<Figure> Window(int load) =>
            windows.GetOrAdd(load, _ => [.. samples.Select(at => PartOf(() => Made(at, load))).OfType<Figure>()]);
        return Explorable.Of(id, controls, state =>
        {
            int slide = slides ? state[controls[0].Id] : 0, load = controls[^1].Id == "load" ? state["load"] : 0;
            return new Frame([OnSameAxes([Made(slide, load), .. Window(load)])[0]], []);
        }, style is null ? null : style.Numbered).AgainFrom(vehicle, "figure", units,
            ("figure", entry.Name), ("plain", plain), ("credit", style?.Credit), ("number", style?.Number),
            ("known", Known(vehicle, settings)), ("logs", null));
    }

    /// <summary>What a page is told of a car in place of its logs, which take it half a minute to fit.</summary>
    private static JsonObject Known(Vehicle vehicle, SettingSlider? settings)
    {
        ProportioningValve? valve = vehicle.Measured is null ? null : vehicle.Hydraulics.RearProportioningValve;
        return new()
        {
            ["slope"] = valve?.Slope,
            ["hysteresis"] = valve?.Hysteresis.Pascals,
            ["out"] = valve?.Adjustment?.KneeBackedOff.Pascals,
            ["turn"] = valve?.Adjustment?.KneePerTurn.Pascals,
            ["settings"] = settings?.Json(),
        };
    }

    /// <summary>A figure as a page makes it again, of a car of which it may know something already.</summary>
    internal static Explorable? Again(
        CatalogueEntry entry, Vehicle file, UnitSystem units, bool plain, HouseStyle style, string id, JsonNode? known) =>
        Of(entry, known is null ? file : OwnMeasurements.WithValve(file, known["slope"]?.GetValue<double>(), Known(known, "hysteresis"),
            Known(known, "out") is { } fullyOut ? (fullyOut, Known(known, "turn")!.Value) : null),
            units, plain, style, id, SettingSlider.Read(known?["settings"]));

    private static Pressure? Known(JsonNode known, string key) =>
        known[key]?.GetValue<double>() is { } pascals ? Pressure.FromPascals(pascals) : null;

    /// <summary>Figures of one kind with axes that reach as far as those of all.</summary>
    internal static IReadOnlyList<Figure> OnSameAxes(IReadOnlyList<Figure> figures)
    {
        Axis x = Joined(one => one.XAxis, one => one.Layers.Select(layer => layer.Extents.X));
        Axis y = Joined(one => one.YAxis, one => one.Layers.Select(layer => layer.Extents.Y).Append(FigureLayout.Stacks(one)));
        return [.. figures.Select(figure => figure with { XAxis = On(figure.XAxis, x), YAxis = On(figure.YAxis, y) })];

        Axis Joined(Func<Figure, Axis> of, Func<Figure, IEnumerable<Extent?>> extents) => of(figures[0]) with
        {
            Minimum = figures.Min(figure => of(figure).Minimum),
            Maximum = figures.Max(figure => of(figure).Maximum),
            Reach = figures.SelectMany(extents).Aggregate((Extent?)null, Extent.Union),
        };
        static Axis On(Axis own, Axis all) => own.Categories is not null ? own : own with
        {
            Minimum = own.Minimum is null ? null : all.Minimum,
            Maximum = own.Maximum is null ? null : all.Maximum,
            Reach = all.Reach,
        };
    }

    /// <summary>A figure of a state; null where the car, so set, has none.</summary>
    internal static Figure? PartOf(Func<Figure> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
