using System.Collections;
using BrakeBalance.Brakes;
using static System.FormattableString;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Finds what a file says that can be, but hardly is: entries outside their usual range, or at odds with others.</summary>
/// <remarks>Source of all limits: common practice; the classes of car and the invented cars of this repository lie within them.</remarks>
internal static class Plausibility
{
    private const double MostFrontPiston = 7, MostRearPiston = 5, MostArcRadians = 0.95;
    private const int MostFrontSliding = 2, MostRearSliding = 1;
    private const double LeastFrontToRear = 0.85, LeastCrossing = 0.12;
    private const double LeastBarsPerG = 15, MostBarsPerG = 250;
    private const double ClassSlack = 0.03;

    /// <summary>The warnings of a file that can be used.</summary>
    /// <param name="document">The file; a range stands at its middle.</param>
    /// <param name="vehicle">The vehicle made of it.</param>
    /// <param name="filled">Paths of the entries that the car class supplies: nobody slipped there.</param>
    public static IReadOnlyList<Warning> Of(VehicleDocument document, Vehicle vehicle, IReadOnlyCollection<string> filled)
    {
        List<Warning> warnings = [];
        OfEntries(document, "", filled, warnings);

        // A number that is off by itself makes the comparisons warn of its consequences.
        string[] compared = ["wheelbase", "loadCases", "front.", "rear.", "hydraulics.split"];
        if (!warnings.Any(warning => compared.Any(part => warning.Path.StartsWith(part, StringComparison.Ordinal))))
        {
            warnings.AddRange(Loads(document, vehicle) is { } loads ? [loads] : OfBrakes(vehicle, document.Fluid));
        }

        return warnings;
    }

    /// <summary>What of the brakes does not go together; a finding that explains the next ones stands alone.</summary>
    public static IReadOnlyList<Warning> OfBrakes(Vehicle vehicle, FluidDocument? fluid)
    {
        List<Warning> twice = [.. Enum.GetValues<Axle>()
            .Select(axle => CountedTwice(vehicle, axle, axle == Axle.Front ? fluid?.Front : fluid?.Rear)).OfType<Warning>()];
        return twice.Count > 0 ? twice
            : Weaker(vehicle) is { } weaker ? [weaker]
            : Crossing(vehicle) is { } crossing ? [crossing]
            : Strength(vehicle) is { } strength ? [strength]
            : [];
    }

    // Every entry given that has a usual range.
    private static void OfEntries(object document, string path, IReadOnlyCollection<string> filled, List<Warning> warnings)
    {
        foreach (FieldInfo field in FieldMap.Of(document.GetType()))
        {
            bool isList = field.Shape == FieldShape.List;
            bool isPart = (isList ? FieldMap.ShapeOf(field.ValueType).Shape : field.Shape) == FieldShape.Document;
            if ((!isPart && field.Usual is null) || field.Property.GetValue(document) is not { } value)
            {
                continue;
            }

            string at = DocumentReader.Join(path, field.Key);
            object?[] elements = isList ? [.. ((IEnumerable)value).Cast<object?>()] : [value];
            for (int i = 0; i < elements.Length; i++)
            {
                string here = isList ? Invariant.Text($"{at}[{i}]") : at;
                if (isPart && elements[i] is { } part)
                {
                    OfEntries(part, here, filled, warnings);
                }
                else if (elements[i] is { } one && !filled.Contains(here) && field.Usual!.Judge(here, one) is { } warning)
                {
                    warnings.Add(warning);
                }
            }
        }
    }

    // Pistons that can be told off in pairs, and are more than the caliper has, or the load asks for, or one side of the disc has room for.
    private static Warning? CountedTwice(Vehicle vehicle, Axle axle, CircuitDocument? circuit)
    {
        if (vehicle.Brakes[axle] is not DiscBrake disc
            || disc.Pistons.Diameters.GroupBy(diameter => Math.Round(diameter.Millimeters, 2)).Any(same => same.Count() % 2 == 1))
        {
            return null;
        }

        double areaPerLoad = disc.Pistons.Area.SquareMillimeters / AxleMassKilograms(vehicle, axle);
        double arc = disc.Pistons.Diameters.Sum(diameter => diameter.Meters) / disc.EffectiveRadius.Meters;
        double most = axle == Axle.Front ? MostFrontPiston : MostRearPiston;
        int pistons = disc.Pistons.Diameters.Count, slides = axle == Axle.Front ? MostFrontSliding : MostRearSliding;
        bool sliding = string.Equals(circuit?.Caliper?.ToString(), "sliding", StringComparison.OrdinalIgnoreCase);
        (string What, string Usual)? odd =
            arc > MostArcRadians
                ? (Invariant($"{pistons} pistons side by side would span {Degrees(arc)}° of the disc."),
                    $"up to {Degrees(MostArcRadians)}° on one side")
            : areaPerLoad > most
                ? (Invariant($"the pistons of one side have {PerLoad(areaPerLoad)} on the axle."), $"up to {PerLoad(most)}")
            : sliding && pistons > slides
                ? (Invariant($"{pistons} pistons in a sliding caliper."), axle == Axle.Front ? "one or two" : "one at the rear")
            : null;
        return odd is not var (what, usual) ? null : new(
            DocumentReader.Join(Name(axle), "brake.pistonDiameters"),
            what,
            usual,
            "pistons counted twice (both sides of a fixed caliper, or both wheels); list those on one side of one disc");
    }

    private static Warning? Weaker(Vehicle vehicle)
    {
        (double front, double rear) = (NewtonMetresPerBar(vehicle, Axle.Front), NewtonMetresPerBar(vehicle, Axle.Rear));
        return front >= LeastFrontToRear * rear ? null : new(
            "front.brake",
            Invariant($"the front brake is weaker than the rear one: {PerPressure(front)} against {PerPressure(rear)}."),
            "the front brake is the stronger one",
            "front and rear swapped, or the rear pistons counted twice");
    }

    // Where the rear brakes with its share of the weight or more, before any valve: the rear locks first on every road.
    private static Warning? Crossing(Vehicle vehicle)
    {
        if (vehicle.Brakes.Front is not DiscBrake || vehicle.Brakes.Rear is not DiscBrake)
        {
            return null;
        }

        double front = NewtonMetresPerBar(vehicle, Axle.Front) / vehicle.Tyres.Front.LoadedRadius.Meters;
        double rear = NewtonMetresPerBar(vehicle, Axle.Rear) * vehicle.Hydraulics.Split.RearToFrontPressureRatio
            / vehicle.Tyres.Rear.LoadedRadius.Meters;
        LoadCase load = vehicle.LoadCases[0];
        double share = AxleMassKilograms(vehicle, Axle.Front) / load.Mass.Kilograms;
        double crossing = (front / (front + rear) - share) / (load.CentreOfGravityHeight / vehicle.Wheelbase);
        return crossing >= LeastCrossing ? null : new(
            "loadCases[0]",
            Invariant.Text($"with {100 * share:0} % of the weight in front, "
                + $"the rear would lock first from {Math.Max(0, crossing):0.00} g on, valve aside."),
            "from 0.3 g or more with discs all round",
            "axle loads swapped, as of a rear-engined car given the front share of its rear axle");
    }

    private static Warning? Strength(Vehicle vehicle)
    {
        double newtonsPerBar = 2 * (NewtonMetresPerBar(vehicle, Axle.Front) / vehicle.Tyres.Front.LoadedRadius.Meters
            + NewtonMetresPerBar(vehicle, Axle.Rear) * vehicle.Hydraulics.Split.RearToFrontPressureRatio
            / vehicle.Tyres.Rear.LoadedRadius.Meters);
        double bars = vehicle.LoadCases[0].Mass.Kilograms * Gravity.StandardMetresPerSecondSquared / newtonsPerBar;
        return bars is >= LeastBarsPerG and <= MostBarsPerG ? null : new(
            "front.brake",
            Invariant($"the brakes, valves aside, would need {InBoth.Text(Pressure.FromBars(bars))} in the front line for 1 g."),
            $"{InBoth.Text(Pressure.FromBars(LeastBarsPerG))} to {InBoth.Text(Pressure.FromBars(MostBarsPerG))}",
            bars < LeastBarsPerG ? "pistons counted twice on both axles, or psi and bar mixed in torquePressure"
                : "radii of pistons given as diameters, or psi and bar mixed in torquePressure");
    }

    private static Warning? Loads(VehicleDocument document, Vehicle vehicle)
    {
        double share = AxleMassKilograms(vehicle, Axle.Front) / vehicle.LoadCases[0].Mass.Kilograms;
        if (CarClasses.Range(document.CarClass, "loadCases[0].frontShare") is { } range
            && !CarClasses.Covers(document.CarClass, "loadCases[0].frontShare", share, ClassSlack)
            && CarClasses.Covers(document.CarClass, "loadCases[0].frontShare", 1 - share, ClassSlack))
        {
            return new(
                "loadCases[0]",
                Invariant($"{share:0.00} of the weight is in front."),
                $"{range.Replace("..", "to", StringComparison.Ordinal)} for the class \"{document.CarClass}\"",
                "axle loads swapped");
        }

        return vehicle.EngineBraking is not { DrivenAxle: Axle.Front } || share >= 0.5 ? null : new(
            "loadCases[0]",
            Invariant($"the front axle is driven and carries {share:0.00} of the weight."),
            "more than half of the weight on driven front wheels",
            "axle loads swapped, or engineBraking.drivenAxle");
    }

    private static string PerLoad(double squareMillimetresPerKilogram) => Invariant($"{squareMillimetresPerKilogram:0.0} mm²/kg (")
        + Invariant($"{Area.FromSquareMillimeters(squareMillimetresPerKilogram).SquareInches / Mass.FromKilograms(1).Pounds:0.0000} ")
        + "in²/lb)";

    private static string PerPressure(double newtonMetresPerBar) => Invariant($"{newtonMetresPerBar:0.0} N·m per bar (")
        + Invariant($"{Torque.FromNewtonMeters(newtonMetresPerBar).PoundForceFeet * Pressure.FromPoundsForcePerSquareInch(100).Bars:0.0} ")
        + "lb·ft per 100 psi)";

    private static string Degrees(double radians) => Invariant($"{radians * 180 / Math.PI:0}");

    private static double NewtonMetresPerBar(Vehicle vehicle, Axle axle) => vehicle.Brakes[axle].TorqueNewtonMetresPerPascal * 1e5;

    private static double AxleMassKilograms(Vehicle vehicle, Axle axle)
    {
        LoadCase load = vehicle.LoadCases[0];
        double rear = load.FrontAxleToCentreOfGravity / vehicle.Wheelbase;
        return load.Mass.Kilograms * (axle == Axle.Front ? 1 - rear : rear);
    }

    private static string Name(Axle axle) => axle == Axle.Front ? "front" : "rear";
}
