namespace BrakeBalance.Hydraulics;

/// <summary>Volume that the master cylinder has to send into one axle's circuit, by cause.</summary>
public sealed record VolumeDemand
{
    /// <summary>To bring pads or shoes into contact.</summary>
    public required Volume Clearance { get; init; }

    /// <summary>To follow drums that have grown hot; none unless said.</summary>
    public Volume DrumGrowth { get; init; } = Volume.Zero;

    /// <summary>Swelling of the hoses.</summary>
    public required Volume Hoses { get; init; }

    /// <summary>Compliance of calipers, pads, drums and shoes.</summary>
    public required Volume Compliance { get; init; }

    /// <summary>Compression of the fluid.</summary>
    public required Volume Compression { get; init; }

    /// <summary>Compression of trapped air.</summary>
    public required Volume Air { get; init; }

    /// <summary>All of it.</summary>
    public Volume Total => Clearance + DrumGrowth + Hoses + Compliance + Compression + Air;
}
