namespace BrakeBalance.Charts;

/// <summary>What a mark stands for; the theme gives each tone its colour.</summary>
/// <remarks>
/// Colour is never the only cue: lines also differ by <see cref="Dash"/> and label, regions by <see cref="Hatch"/> and words.
/// </remarks>
public enum Tone
{
    /// <summary>The thing the figure is about: text colour.</summary>
    Main,

    /// <summary>The front axle.</summary>
    Front,

    /// <summary>The rear axle.</summary>
    Rear,

    /// <summary>The ideal or a good range.</summary>
    Ideal,

    /// <summary>A second case, a comparison.</summary>
    Other,

    /// <summary>Guide lines and things that stand back.</summary>
    Guide,
}

/// <summary>How a line is broken.</summary>
public enum Dash
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dash,

    /// <summary>Dots.</summary>
    Dot,

    /// <summary>A dash and a dot by turns.</summary>
    DashDot,

    /// <summary>Long dashes.</summary>
    LongDash,
}

/// <summary>How an area is hatched, so that it differs without colour.</summary>
public enum Hatch
{
    /// <summary>Plain tint.</summary>
    None,

    /// <summary>Lines rising to the right.</summary>
    Rising,

    /// <summary>Lines falling to the right.</summary>
    Falling,

    /// <summary>Dots.</summary>
    Dots,

    /// <summary>Crossed lines.</summary>
    Crossed,
}

/// <summary>The shape of a point marker.</summary>
public enum Marker
{
    /// <summary>A filled disc.</summary>
    Circle,

    /// <summary>A filled square.</summary>
    Square,

    /// <summary>A filled diamond.</summary>
    Diamond,

    /// <summary>A filled triangle, point upwards.</summary>
    Triangle,

    /// <summary>An upright cross.</summary>
    Cross,

    /// <summary>An open circle.</summary>
    Ring,
}
