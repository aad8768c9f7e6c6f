using System.Text;
using BrakeBalance.Assist;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Choosing;

/// <summary>A list of parts to begin with: invented parts a size or two about those of a car.</summary>
internal static class StarterParts
{
    // The sizes of no car in particular: a saloon with discs all round.
    private static readonly Sizes Usual = new([57], [37], 117, 0.38, 1.0625 * 25.4, 4.1, "hydraulics.rearValves[0].knee", 19, null, null);

    public static string Text(string? vehicle, string header, UnitSystem? units, Func<string, string[]> series)
    {
        Vehicle? car = vehicle is null ? null : VehicleFile.TryRead(vehicle).Reading?.Vehicle;
        Sizes sizes = car is null ? Usual : Of(car);
        var list = new StringBuilder("""
            # Parts to choose among. All parts, prices and masses are invented; sizes are common in the trade (common practice).
            # part: parts of one name exclude one another; the present part of the car always stays among them.
            # sets: entries of the vehicle file as '--set' names them, separated by semicolons; lists by commas.
            # One value of a row may stand for several: "inch series", "metric series", "inch series 3/4 in .. 1 in",
            # or a range with its step, "4 .. 6 step 0.5".
            # rating: highest line pressure that the part bears, gauge. What no row names stays as it is.

            """);
        if (car is not null)
        {
            list.Append(CultureInfo.InvariantCulture, $"# Made about the sizes of {car.Name.ReplaceLineEndings(" ")}.\n");
        }

        list.Append(InUnits(header, units)).Append('\n');
        foreach (string[] either in Rows(sizes, car, series))
        {
            string row = either.FirstOrDefault(one => vehicle is null || Fits(header, one, vehicle)) ?? "# not for this car: " + either[0];
            list.Append(InUnits(row, units)).Append('\n');
        }

        return list.ToString();
    }

    // A cell that ends a line without a unit is in that of the header.
    private static string InUnits(string line, UnitSystem? units)
    {
        if (units != UnitSystem.Us)
        {
            return units is { } system ? OtherUnits.Within(line, system) : line;
        }

        string[] cells = line.Replace("[kg]", "[lb]", StringComparison.Ordinal).Replace("[bar]", "[psi]", StringComparison.Ordinal)
            .Split(',');
        string Customary(string number, string unit) =>
            number.Any(char.IsAsciiLetter) ? number : OtherUnits.Text($"{number} {unit}", UnitSystem.Us).Split(' ')[0];
        (cells[^2], cells[^1]) = (Customary(cells[^2], "kg"), Customary(cells[^1], "bar"));
        return OtherUnits.Within(string.Join(',', cells), UnitSystem.Us);
    }

    private static bool Fits(string header, string row, string vehicle) =>
        PartsList.Read(new StringReader($"{header}\n{row}\n"), vehicle).Parts is not null;

    // Each row, and what stands in its place where the car has no entry for all of it.
    private static IEnumerable<string[]> Rows(Sizes sizes, Vehicle? car, Func<string, string[]> series)
    {
        static string N(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
        string Bores(double present)
        {
            string[] near = [.. series("inch series").Where(size =>
                QuantityOption.Read<Length>(size).Value?.Millimeters / present is > 0.8 and < 1.1)];
            return near.Length == 0 ? $"{N(present)} mm" : $"inch series {near[0]} .. {near[^1]}";
        }

        string Pistons(double[] present, double factor) => string.Join(", ", present.Select(one => $"{N(Math.Round(one * factor))} mm"));
        if (car?.Control?.MasterCylinder is TwinMasterCylinders twin)
        {
            yield return [$"front cylinder,invented single,hydraulics.split.frontBore = {Bores(twin.FrontBore.Millimeters)},60,0.8,170"];
            yield return [$"rear cylinder,invented single,hydraulics.split.rearBore = {Bores(twin.RearBore.Millimeters)},60,0.8,170"];
            double share = Math.Round(twin.FrontForceShare, 2);
            double advised = Setting.Of(car).Recommended?.FrontForceShare is { } best ? Math.Round(best, 2) : share;
            double low = Math.Max(0.2, Math.Min(share, advised) - 0.06), high = Math.Min(0.8, Math.Max(share, advised) + 0.06);
            yield return [$"balance bar,present one set anew,hydraulics.split.frontForceShare = {N(low)} .. {N(high)} step 0.02,0,,"];
        }
        else
        {
            yield return [$"master cylinder,invented tandem,masterCylinder.bore = {Bores(sizes.Bore)},95,1.9,170"];
        }

        double ratio = Math.Round(sizes.Ratio * 0.93, 1);
        yield return [$"pedal,drilled pedal,pedal.ratio = {N(ratio)} .. {N(ratio + 1.2)} step 0.4,40,1.1,"];
        if (car?.Control?.Assist is VacuumBooster vacuum)
        {
            double inches = Math.Round(vacuum.DiaphragmDiameter.Inches);
            string sizesOfIt = $"{N(inches - 1)} in .. {N(inches + 2)} in step 1 in";
            yield return [$"booster,invented vacuum booster,assist.diaphragmDiameter = {sizesOfIt},160,3.4,"];
        }

        if (sizes.Front is { } front)
        {
            yield return [$"front caliper,invented smaller pistons,\"front.brake.pistonDiameters = {Pistons(front, 0.95)}\",120,4.4,170"];
            yield return [$"front caliper,invented bigger pistons,\"front.brake.pistonDiameters = {Pistons(front, 1.05)}\",150,4.9,170"];
        }

        string pad = N(Math.Min(1, Math.Round(sizes.Friction + 0.04, 2)));
        yield return [$"front pads,invented fast road pad,front.brake.friction = {pad},70,1.2,"];
        if (sizes.Front is not null)
        {
            string radius = $"front.brake.effectiveRadius = {N(Math.Round(sizes.Radius + 8))} mm";
            string plain = $"front disc,invented wider disc,{radius},180,10.2,";
            yield return sizes.Ring is { } ring
                ? [$"front disc,invented wider disc,\"{radius}; front.heat.ringMass = {N(Math.Round(ring * 1.2, 1))} kg\",180,10.2,", plain]
                : [plain];
        }

        if (sizes.Rear is { } rear)
        {
            yield return [$"rear caliper,invented small piston,\"rear.brake.pistonDiameters = {Pistons(rear, 0.93)}\",90,3.1,170"];
        }
        else if (car?.Brakes.Rear is DrumBrake drum)
        {
            double bore = drum.WheelCylinderDiameter.Millimeters;
            yield return
            [
                $"rear wheel cylinders,invented pair,rear.brake.wheelCylinderDiameter = {N(Math.Round(bore * 0.9, 1))} mm .. "
                    + $"{N(Math.Round((bore * 0.9) + 3, 1))} mm step 1.5 mm,35,0.6,170",
            ];
        }

        if (sizes.Valve is { } valve)
        {
            // Nine knees from fully out, for other brakes may need less than a knee near the present one. A fixed valve is bought.
            bool isFixed = car?.Hydraulics is { SensesLoad: false, RearProportioningValve: null or { Adjustment: null } };
            (double most, double usual) = (Math.Round(sizes.Knee) + 6, isFixed ? 2 : Math.Max(3, Math.Round(sizes.Knee) - 10));
            double least = Math.Min(usual, Math.Ceiling(sizes.BackedOff ?? usual)), step = Math.Max(2, Math.Ceiling((most - least) / 8));
            string knees = $"{valve} = {N(least)} bar .. {N(most)} bar step {N(step)} bar";
            yield return [$"rear valve,{(isFixed ? "invented one of another" : "present one with its")} knee"
                + (isFixed ? $",{knees},60,0.4,170" : $" set anew,{knees},0,,")];
            if (valve.EndsWith(".knee", StringComparison.Ordinal))
            {
                string bypass = valve.Replace(".knee", ".bypassWhenFrontLost = true", StringComparison.Ordinal);
                yield return [$"rear valve,invented one with bypass,\"{knees}; {bypass}\",110,0.6,170"];
            }
        }
    }

    private static Sizes Of(Vehicle car)
    {
        int at = car.Hydraulics.RearValves.ToList().FindIndex(one => one is ProportioningValve or LoadSensingValve or LimitingValve);
        (string Entry, double Bars) valve = at < 0 ? ("", 0) : car.Hydraulics.RearValves[at] switch
        {
            ProportioningValve one => ("knee", one.Knee.Bars),
            LoadSensingValve one => ("kneeAtReference", one.KneeAtReference.Bars),
            LimitingValve one => ("limit", one.Limit.Bars),
            _ => ("", 0),
        };
        double[]? Pistons(Brake brake) => brake is DiscBrake disc ? [.. disc.Pistons.Diameters.Select(one => one.Millimeters)] : null;
        return new(
            Pistons(car.Brakes.Front), Pistons(car.Brakes.Rear), car.Brakes.Front.EffectiveRadius.Millimeters,
            car.Brakes.Front.FrictionCoefficient,
            Math.Sqrt((car.Control?.MasterCylinder.PistonAreas.Front.SquareMillimeters ?? 400) * 4 / Math.PI),
            car.Control?.Pedal.Lever.RatioAt(Length.Zero) ?? 4,
            at < 0 ? null : Invariant.Text($"hydraulics.rearValves[{at}].{valve.Entry}"), valve.Bars,
            car.AxleDynamics.Front.Heat?.RingMass.Kilograms,
            at < 0 ? null : (car.Hydraulics.RearValves[at] as ProportioningValve)?.Adjustment?.KneeBackedOff.Bars);
    }

    /// <summary>What the list is made about: lengths in millimetres, pressures in bars, masses in kilograms.</summary>
    private sealed record Sizes(
        double[]? Front, double[]? Rear, double Radius, double Friction, double Bore, double Ratio, string? Valve, double Knee,
        double? Ring, double? BackedOff);
}
