using System.Text;
using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>
/// An ordered list of test stops, with cautions; its CSV is a sheet to fill in that <see cref="LogReader.ReadTestStops"/> reads back.
/// </summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Stops">The stops in order: least rear braking and least speed first.</param>
/// <param name="Cautions">Cautions, to be read out before the first stop.</param>
public sealed record TestPlan(string Car, IReadOnlyList<PlannedStop> Stops, IReadOnlyList<string> Cautions)
{
    /// <summary>The sheet as CSV: planned values filled in, measured ones left empty.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Text with LF line ends; cells separated by semicolons, decimals with a point.</returns>
    public string ToCsv(UnitSystem units = UnitSystem.Si)
    {
        (string pressure, string speed, string temperature) = units == UnitSystem.Us ? ("psi", "mph", "°F") : ("bar", "km/h", "°C");
        var csv = new StringBuilder();
        csv.Append(CultureInfo.InvariantCulture,
            $"# test plan for {Car.Replace('\n', ' ')}; fill in the empty cells, leave those of stops not made\n");
        foreach (string caution in Cautions)
        {
            csv.Append(CultureInfo.InvariantCulture, $"# {caution}\n");
        }

        csv.Append("# locked first: none, front, rear or together; lock pressure: front gauge at the moment of lock-up\n");
        csv.Append(CultureInfo.InvariantCulture, $"stop;speed [{speed}];target pressure [{pressure}];load case;surface;turns;abort if;"
            + $"front pressure [{pressure}];rear pressure [{pressure}];lock pressure [{pressure}];deceleration [g];locked first;"
            + $"temperature [{temperature}];notes\n");
        foreach (PlannedStop stop in Stops)
        {
            string turns = stop.Turns?.ToString("0.##", CultureInfo.InvariantCulture) ?? "";
            string fast = Measure.Speed.In(units).Number(stop.Speed.MetersPerSecond);
            string high = Measure.LinePressure.In(units).Number(stop.TargetPressure.Pascals);
            csv.Append(CultureInfo.InvariantCulture,
                $"{stop.Number};{fast};{high};{CsvText.Cell(stop.LoadCase)};"
                    + $"{CsvText.Cell(stop.Surface)};{turns};{CsvText.Cell(stop.AbortIf(units))};;;;;;;\n");
        }

        return csv.ToString();
    }
}
