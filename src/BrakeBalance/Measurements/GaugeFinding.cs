namespace BrakeBalance.Measurements;

/// <summary>Something the gauges show that is not a healthy valve.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">The finding in words, with the numbers and what to check.</param>
public sealed record GaugeFinding(GaugeFindingKind Kind, string Text);

/// <summary>Kinds of finding.</summary>
public enum GaugeFindingKind
{
    /// <summary>The rear gauge leads the front one above a knee: lines, gauges or columns are swapped.</summary>
    Swapped,

    /// <summary>The rear circuit loses pressure while the pedal is held.</summary>
    RearLeak,

    /// <summary>The front circuit loses pressure while the pedal is held.</summary>
    FrontLeak,

    /// <summary>Both circuits lose pressure together while the pedal is held.</summary>
    BothFall,

    /// <summary>The rear gauge shows a lower or higher share from the first bar on, below any knee.</summary>
    UnequalBelowKnee,

    /// <summary>The gauges differ below any knee by no more than two gauges may; they have to be swapped before anything follows.</summary>
    GaugesDiffer,

    /// <summary>The rear gauge hardly moves.</summary>
    NoRearPressure,

    /// <summary>One gauge leads the other by a constant pressure.</summary>
    Offset,

    /// <summary>The slope changes with the adjuster more than scatter explains.</summary>
    SlopeVaries,

    /// <summary>Single readings that can only be mistakes were given no say.</summary>
    Outliers,

    /// <summary>One gauge moves away from the other in the course of the log.</summary>
    Drift,

    /// <summary>Readings called rising were taken while the pressure fell.</summary>
    MixedBranches,

    /// <summary>The balance bar of a rear line without a valve, or the knee of a fixed valve, is another than the vehicle file's.</summary>
    UnlikeTheFile,

    /// <summary>There are not enough readings at a position.</summary>
    TooFew,
}
