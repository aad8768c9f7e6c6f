namespace BrakeBalance.Measurements;

/// <summary>The knee of one curve of a <see cref="KneeFit"/>.</summary>
internal sealed class FittedKnee
{
    /// <summary>Knee: median and 90 % bounds.</summary>
    public required Interval<double> Knee { get; init; }

    /// <summary>Whether the bend is real: two lines fit clearly better than one.</summary>
    public required bool HasKnee { get; init; }

    /// <summary>Which readings are gross errors.</summary>
    public required bool[] LeftOut { get; init; }

    /// <summary>Chance that each reading is honest [–].</summary>
    public required double[] Weights { get; init; }

    /// <summary>Even nodes of the slope.</summary>
    public required double[] Slopes { get; init; }

    /// <summary>Mean and standard deviation of the knee at each of them.</summary>
    public required (double Mean, double Deviation)[] Given { get; init; }

    /// <summary>Mean and standard deviation of the knee if the slope were known.</summary>
    public (double Mean, double Deviation) GivenSlope(double slope)
    {
        double at = Math.Clamp((slope - Slopes[0]) / (Slopes[^1] - Slopes[0]) * (Slopes.Length - 1), 0, Slopes.Length - 1);
        int i = Math.Min((int)at, Slopes.Length - 2);
        double part = at - i;
        return (Given[i].Mean + part * (Given[i + 1].Mean - Given[i].Mean), Given[i].Deviation
            + part * (Given[i + 1].Deviation - Given[i].Deviation));
    }
}
