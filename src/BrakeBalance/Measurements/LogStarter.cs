namespace BrakeBalance.Measurements;

/// <summary>Writes empty logs to fill in: the columns that the reader knows, and what goes into each.</summary>
/// <remarks>The example rows are remarks, which the reader passes over: nothing invented can be taken for a measurement.</remarks>
public static class LogStarter
{
    /// <summary>The kinds of log that can be started.</summary>
    public static IReadOnlyList<string> Kinds => ["gauges", "stops"];

    /// <summary>An empty log.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="us">Whether the columns are in psi and mph rather than bar and km/h.</param>
    /// <returns>CSV with remarks and a final line break.</returns>
    /// <exception cref="ArgumentException">There is no such kind.</exception>
    public static string Text(string kind, bool us = false)
    {
        string[] lines = kind switch
        {
            "gauges" => Gauges(us),
            "stops" => Stops(us),
            _ => throw new ArgumentException($"\"{kind}\" is none of {string.Join(", ", Kinds)}."),
        };
        return string.Concat(lines.Select(line => line + "\n"));
    }

    private static string[] Gauges(bool us) =>
    [
        "# Gauge readings: one line for each pair, read while both gauges stand still. Lines that begin with # are remarks.",
        "# turns: of the valve's adjuster, in from fully out; leave the column empty for a fixed valve.",
        "# phase: apply while the pedal goes down, release while it eases, hold in between.",
        "# time: a column 'time [s]' may be added; a pedal held for half a minute, read every few seconds, shows creep and leaks.",
        "# At each setting of the adjuster take about ten pairs, half of them above the pressure at which the gauges part.",
        "# Two example lines, not readings:",
        us ? "#   0;300;215;apply;" : "#   0;20.5;15.0;apply;",
        us ? "#   0;580;285;apply;gauges swapped over for this one" : "#   0;40.0;19.5;apply;gauges swapped over for this one",
        us ? "turns;front pressure [psi];rear pressure [psi];phase;note" : "turns;front pressure [bar];rear pressure [bar];phase;note",
    ];

    private static string[] Stops(bool us) =>
    [
        "# Test stops: one line for each stop, on a closed road. Lines that begin with # are remarks.",
        "# load case: as the vehicle file names it. surface: as you call it, the same word for the same surface.",
        "# turns: of the valve's adjuster, in from fully out. Pressures: as the gauges stood during the even part of the stop.",
        "# lock pressure: front gauge as the first wheel locked. locked first: none, front, rear or together.",
        "# A number that was not read stays empty; a stop needs a pressure, and a deceleration or which axle locked.",
        "# Two example lines, not stops:",
        us ? "#   1;30;driver only;dry;0;390;205;;0.47;none;" : "#   1;50;driver only;dry;0;27.0;14.0;;0.47;none;",
        us ? "#   2;30;driver only;dry;0;;;640;;front;" : "#   2;50;driver only;dry;0;;;44.0;;front;",
        us
            ? "stop;speed [mph];load case;surface;turns;front "
                + "pressure [psi];rear pressure [psi];lock pressure [psi];deceleration [g];locked first;notes"
            : "stop;speed [km/h];load case;surface;turns;front "
                + "pressure [bar];rear pressure [bar];lock pressure [bar];deceleration [g];locked first;notes",
    ];
}
