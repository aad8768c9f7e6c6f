namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>Reads the options that describe the road and the foot of a stop; what cannot be read is added to the problems.</summary>
internal static class RoadText
{
    /// <summary>A slope in percent or as an angle, uphill positive.</summary>
    public static Angle Grade(string text, List<string> problems)
    {
        string trimmed = text.Trim();
        Angle? grade = trimmed.EndsWith('%') && double.TryParse(trimmed[..^1], NumberStyles.Float, CultureInfo.InvariantCulture,
            out double percent)
            ? Angle.FromRadians(Math.Atan(percent / 100))
            : Angle.TryParse(trimmed, CultureInfo.InvariantCulture, out Angle angle) ? angle : null;
        if (grade is { } known && Math.Abs(known.Degrees) <= 20)
        {
            return known;
        }

        problems.Add($"--grade: '{text}' is not a slope within 20 degrees of level, such as \"6 %\", \"-3 %\" or \"3.5 °\".");
        return Angle.Zero;
    }

    /// <summary>The force of the foot; null when it is not given.</summary>
    public static Force? PedalForce(string? text, Vehicle? vehicle, List<string> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (!Force.TryParse(text, CultureInfo.InvariantCulture, out Force force) || force.Newtons is not (>= 50 and <= 3000))
        {
            problems.Add($"--pedal-force: '{text}' is not a force from 50 N to 3000 N, such as \"500 N\" or \"110 lbf\".");
        }
        else if (vehicle is { Control: null })
        {
            problems.Add("--pedal-force: the vehicle file does not say what lies between foot and line pressure; "
                + "give pedal, assist and masterCylinder in it.");
        }

        return force;
    }

    /// <summary>The rate at which the foot lets the pressure fall; null when it is not given.</summary>
    public static PressureChangeRate? ReleaseRate(string? text, List<string> problems)
    {
        if (text is null)
        {
            return null;
        }

        string trimmed = text.Trim();
        if (trimmed.EndsWith("/s", StringComparison.Ordinal)
            && Pressure.TryParse(trimmed[..^2].TrimEnd(), CultureInfo.InvariantCulture, out Pressure perSecond)
            && perSecond.Bars is >= 1 and <= 10_000)
        {
            return PressureChangeRate.FromPascalsPerSecond(perSecond.Pascals);
        }

        problems.Add($"--release: \'{text}\' is no fall of pressure from 1 bar/s to 10000 bar/s, such as \"100 bar/s\" or \"1500 psi/s\".");
        return null;
    }
}
