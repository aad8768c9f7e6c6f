using System.Text.Json;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet.Units;

namespace BrakeBalance.Measurements;

/// <summary>Writes what gauges and test stops say of a car into the text of its vehicle file.</summary>
/// <remarks>
/// Each number becomes the range of its 90 % interval, with a comment beside it that says what it was fitted to; comments and layout stay.
/// The logs are marked as fitted, so that they do not count twice.
/// </remarks>
public static class FittedFile
{
    private const string NothingFitted =
        "Nothing was fitted: name own test stops or gauges, under measurements or by --stops and --gauges.";

    /// <summary>The text of the file with the fitted numbers.</summary>
    /// <param name="text">The text of the vehicle file that the car was read from.</param>
    /// <param name="own">What was measured on the car; null for nothing.</param>
    /// <param name="folder">Whole path of the folder that the new file goes to: the logs' paths are counted from it.</param>
    /// <param name="date">Day of the tests, as shown in the comments; null for none.</param>
    /// <param name="answer">The answer whose limit the file keeps; worked out when null.</param>
    /// <returns>The new text, and the paths of the entries that were written.</returns>
    /// <exception cref="ArgumentException">
    /// There is nothing fitted, or it does not fit the car, or does not fit into the file; the message says why.
    /// </exception>
    public static (string Text, IReadOnlyList<string> Written) Write(
        string text, OwnMeasurements? own, string folder, DateOnly? date, Setting? answer = null)
    {
        Refuse.If(own is null, NothingFitted, nameof(own));

        Refuse.If(own.Doubts.Count > 0, "The measurements do not fit the car, so nothing is written: " + string.Join(' ', own.Doubts));

        var file = new JsonText(text);
        List<string> written = [];
        (string Entry, string Json) kept = ("", "");
        void Set(string path, string? json)
        {
            if (json is not null && file.Set(path, json))
            {
                written.Add(path);
            }
        }

        Vehicle car = own.File;
        if (own.Estimate is { StopsUsed: > 0 } estimate)
        {
            string by = Told($"{estimate.StopsUsed} test stops", date);
            kept = KeptLimit(answer ?? Setting.Of(own.Attached()), UnitAt(file, "measurements.safeKnee", PressureUnit.Bar), by);
            Friction("front", car.Brakes.Front, estimate.Parameters[0].Posterior, by);
            Friction("rear", car.Brakes.Rear, estimate.Parameters[1].Posterior, by);
            // A fit tells how well the mean is known, not how far a day's brakes are from it: that stays what it was.
            PerAxle<double> spread = car.Conditions.FrictionSpread;
            string Kept(double of) => Invariant.Text($"{of:0.###} /* as before the fit */");
            if (!file.Has("conditions"))
            {
                Set("conditions", $"{{ \"frontFrictionSpread\": {Kept(spread.Front)}, \"rearFrictionSpread\": {Kept(spread.Rear)} }}");
            }
            else
            {
                const string front = "conditions.frontFrictionSpread", rear = "conditions.rearFrictionSpread";
                Set(front, file.Has(front) ? null : Kept(spread.Front));
                Set(rear, file.Has(rear) ? null : Kept(spread.Rear));
            }

            Interval<double> height =
                estimate.Parameters[2].Posterior.Select(metres => metres / car.LoadCases[0].CentreOfGravityHeight.Meters);
            for (int i = 0; i < car.LoadCases.Length; i++)
            {
                string path = Invariant.Text($"loadCases[{i}].centreOfGravityHeight");
                double metres = car.LoadCases[i].CentreOfGravityHeight.Meters;
                Set(path, Quantity(file, path, height.Select(factor => (IQuantity)Length.FromMeters(factor * metres)), by));
            }
        }

        void Friction(string axle, Brake brake, Interval<double> fitted, string by)
        {
            string path = axle + ".brake.friction";
            if (brake is MeasuredBrake && file.Written(axle + ".brake.torque") is { } written
                && QuantityText.Read(JsonSerializer.Deserialize<string>(written)!, typeof(Torque), out IQuantity? low, out IQuantity? high)
                    is null)
            {
                // The friction of such a brake is that at which its torque was taken: the torque is what the stops tell.
                path = axle + ".brake.torque";
                double torque = ((Torque)low! + (Torque)high!).NewtonMeters / 2 / brake.BrakeFactor;
                Set(path, Quantity(file, path, fitted.Select(friction =>
                    (IQuantity)Torque.FromNewtonMeters(torque * brake.BrakeFactorAt(friction))), by));
            }
            else
            {
                Set(path, Number(file, path, fitted, by));
            }

            if (file.Has(axle + ".brake.brakeFactor") && !file.Has(axle + ".brake.brakeFactorFriction")
                && brake is DrumBrake { Shoes: CatalogueShoes shoes })
            {
                Set(axle + ".brake.brakeFactorFriction",
                    Invariant.Text($"{shoes.NominalFriction:0.####} /* the friction before the fit */"));
            }
        }

        if (!own.Logs.Fitted && own.Valve is { } valve && Valve(file, car) is { } at)
        {
            string by = Told($"{own.Gauges!.Rows.Count} pairs of gauge readings", date);
            Set(at + ".slope", valve.Slope is { } slope
                ? Number(file, at + ".slope",
                    new(Math.Clamp(slope.Estimate, 0, 1), Math.Clamp(slope.Low, 0, 1), Math.Clamp(slope.High, 0, 1)), by)
                : null);
            Set(at + ".hysteresis", valve.Hysteresis is { } gap
                ? Quantity(file, at + ".hysteresis", gap.Select(pressure => (IQuantity)pressure), by) : null);
            if (file.Has(at + ".adjuster") && valve.Calibration is { } adjuster)
            {
                foreach ((string entry, Interval<Pressure> band) in (ReadOnlySpan<(string, Interval<Pressure>)>)
                    [(".adjuster.kneeBackedOff", adjuster.KneeAt(0)), (".adjuster.kneePerTurn", adjuster.KneePerTurn)])
                {
                    Set(at + entry, Quantity(file, at + entry, band.Select(pressure => (IQuantity)pressure), by));
                }
            }
        }

        Refuse.If(written.Count == 0,
            own.Logs.Fitted ? "The fit of these logs stands in the file already (entry measurements.fitted)." : NothingFitted);

        if (!file.Has("measurements"))
        {
            Set("measurements", $"{{ \"fitted\": true{(kept.Json.Length > 0 ? $", \"{kept.Entry}\": {kept.Json}" : "")} }}");
        }
        else
        {
            foreach ((string key, string? log) in ((string, string?)[])[("gauges", own.Logs.Gauges), ("stops", own.Logs.Stops),
                ("series", own.Logs.Series)])
            {
                if (log is not null)
                {
                    string path = Path.GetRelativePath(folder, log).Replace('\\', '/');
                    file.Set("measurements." + key, JsonSerializer.Serialize(path, CommentedFile.Relaxed));
                }
            }

            Set("measurements." + kept.Entry, kept.Json.Length > 0 ? kept.Json : null);
            file.Set("measurements.fitted", "true");
        }

        string made = file.ToString();
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(made);
        return reading is null
            ? throw new ArgumentException("What was fitted does not go into the vehicle file: " + string.Join(" ", problems))
            : (made, written);
    }

    // Rounded to the safe side.
    private static (string Entry, string Json) KeptLimit(Setting setting, Enum unit, string by)
    {
        IQuantity limit = setting.SafeLimit?.Knee ?? Pressure.Zero;
        (double knee, double share) = (limit.As(unit), setting.SafeLimit?.FrontForceShare ?? 1);
        return setting.Variable == SettingVariable.BalanceBar
            ? ("safeFrontShare", Invariant.Text($"{Math.Ceiling(1000 * share - 1e-6) / 1000:0.###} /* {by} */"))
            : ("safeKnee", Invariant.Text($"\"{Math.Floor(100 * knee + 1e-6) / 100:0.##} {KnownQuantities.Symbol(unit)}\" /* {by} */"));
    }

    private static string? Valve(JsonText file, Vehicle car)
    {
        int i = car.Hydraulics.RearValves.ToList().FindIndex(valve => valve is Hydraulics.ProportioningValve);
        string path = Invariant.Text($"hydraulics.rearValves[{i}]");
        return file.Has(path) ? path : null;
    }

    private static string Told(string by, DateOnly? date) =>
        "fitted to " + by + (date is { } day ? day.ToString(", yyyy-MM-dd", CultureInfo.InvariantCulture) : "");

    private static string Number(JsonText file, string path, Interval<double> band, string by) => Beside(file, path, band, "", by);

    private static string Quantity(JsonText file, string path, Interval<IQuantity> band, string by)
    {
        Enum unit = UnitAt(file, path, band.Estimate.Unit);
        return Beside(file, path, band.Select(quantity => quantity.As(unit)), " " + KnownQuantities.Symbol(unit), by);
    }

    // The unit in which the file gives the value; where it gives none, the usual one of the system in which it gives the wheelbase.
    private static Enum UnitAt(JsonText file, string path, Enum usual) => Given(file, path, usual)
        ?? OtherUnits.In(null, usual, Given(file, "wheelbase", LengthUnit.Meter) is LengthUnit.Inch or LengthUnit.Foot
            ? UnitSystem.Us : UnitSystem.Si);

    private static Enum? Given(JsonText file, string path, Enum usual) => file.Written(path) is { } old && QuantityText.Read(
        JsonSerializer.Deserialize<string>(old)!, KnownQuantities.From(0, usual).GetType(), out IQuantity? given, out _) is null
            ? given!.Unit : null;

    // The range is written a digit finer than it is told, so that its middle stays where the interval's is.
    private static string Beside(JsonText file, string path, Interval<double> band, string unit, string by)
    {
        int digits = Digits(band.High - band.Low);
        string range = $"\"{Down(band.Low, digits + 1)}{unit} .. {Up(band.High, digits + 1)}{unit}\"";
        string told = $"{Shown(band.Estimate, digits)}{unit}, 90 % interval {Shown(band.Low, digits)} to {Shown(band.High, digits)}{unit}";
        return $"{range} /* {by}: {told}{(file.Written(path) is { } old ? $"; was {old.Trim('"')}" : "")} */";
    }

    /// <summary>Digits behind the point that show a width by its two leading ones.</summary>
    private static int Digits(double width) => width > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, 6) : 4;

    private static string Down(double value, int digits) => Shown(Math.Floor(value * Math.Pow(10, digits)) / Math.Pow(10, digits), digits);

    private static string Up(double value, int digits) => Shown(Math.Ceiling(value * Math.Pow(10, digits)) / Math.Pow(10, digits), digits);

    private static string Shown(double value, int digits) =>
        value.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
