using BrakeBalance.Pedals;

namespace BrakeBalance.Hydraulics;

/// <summary>Where the pedal's travel goes at given line pressures, and what is left.</summary>
/// <remarks>
/// The rod's travel is the push-rod gap, the travel to cover the ports and the travel that sends the volume; the pad's is that through the
/// lever, plus free play. Parts are scaled so that they add up also where the lever's ratio changes. Source: continuity.
/// </remarks>
public sealed record PedalTravel
{
    /// <summary>Least travel that should be left under a firm push: 50 mm (common practice).</summary>
    public static Length WantedReserve { get; } = Length.FromMillimeters(50);

    // Few ask for the parts; a search of sets asks millions of times for the whole.
    private readonly Func<ImmutableArray<PedalTravelPart>> _parts;

    private PedalTravel(Func<ImmutableArray<PedalTravelPart>> parts) => _parts = parts;

    /// <summary>The parts, in the order in which they are used up; travels at the pad.</summary>
    public ImmutableArray<PedalTravelPart> Parts => field.IsDefault ? field = _parts() : field;

    /// <summary>Travel of the master cylinder's rod.</summary>
    public Length RodTravel { get; private init; }

    /// <summary>Stroke of the master cylinder that is left; negative when the piston is at its end before the pressure is there.</summary>
    public Length StrokeLeft { get; private init; }

    /// <summary>Travel of the pad from rest; null when the lever cannot push the rod so far.</summary>
    public Length? Pad { get; private init; }

    /// <summary>
    /// Travel of the pad that is left to the floor; negative when the pedal is on the floor first; null when the lever cannot push so
    /// far.
    /// </summary>
    public Length? PadLeft { get; private init; }

    /// <summary>Whether the pressure can be reached at all before the piston or the pedal comes to its end.</summary>
    public bool Reaches => StrokeLeft >= Length.Zero && PadLeft is { } left && left >= Length.Zero;

    /// <summary>Travel left to the floor once the pressure stands; null when piston, lever or pedal come to their end before.</summary>
    public Length? LeftToFloor => Reaches ? PadLeft : null;

    /// <summary>What takes no travel here for want of a number, so that less is left than it seems.</summary>
    public ImmutableArray<string> NotCounted => [.. Parts.Select(part => part.NotCounted).OfType<string>()];

    /// <summary>A warning of a long pedal in words; null when there is none to give.</summary>
    public string? Warning => WarningFor(StrokeLeft, PadLeft);

    /// <summary>The travel budget of a sound system.</summary>
    /// <param name="pedal">The pedal.</param>
    /// <param name="master">The master cylinder.</param>
    /// <param name="circuits">What each axle's circuit swallows.</param>
    /// <param name="linePressures">Line pressure at the front and rear brakes, gauge; not negative.</param>
    /// <param name="pushRodGap">Gap between the booster's push rod and the piston; not negative.</param>
    /// <param name="linesAtBlowOff">
    /// Line pressures when the large bore of a quick-take-up cylinder has blown off; unless said the lower of that pressure and
    /// <paramref name="linePressures"/>, as without valves.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A pressure or the gap is negative, or a pressure lies beyond the table of hoses.
    /// </exception>
    public static PedalTravel At(Pedal pedal, MasterCylinder master, PerAxle<CircuitVolume> circuits, PerAxle<Pressure> linePressures,
        Length pushRodGap = default, PerAxle<Pressure>? linesAtBlowOff = null)
    {
        ArgumentNullException.ThrowIfNull(pedal);
        ArgumentNullException.ThrowIfNull(master);
        ArgumentOutOfRangeException.ThrowIfLessThan(pushRodGap, Length.Zero);
        PerAxle<Pressure> filling = master.BlowOffPressure is { } blowOff
            ? linesAtBlowOff ?? linePressures.Select(line => line < blowOff ? line : blowOff)
            : linePressures;
        VolumeDemand front = circuits.Front.Demand(linePressures.Front), rear = circuits.Rear.Demand(linePressures.Rear);
        VolumeDemand frontFilled = master.BlowOffPressure is null ? front : circuits.Front.Demand(filling.Front);
        VolumeDemand rearFilled = master.BlowOffPressure is null ? rear : circuits.Rear.Demand(filling.Rear);
        Length ports = master.CompensatingPortTravel;
        Length RodFor(Func<VolumeDemand, Volume>? atFront, Func<VolumeDemand, Volume>? atRear) =>
            master.RodTravel(new(atFront?.Invoke(front) ?? Volume.Zero, atRear?.Invoke(rear) ?? Volume.Zero)) - ports
            - master.TravelSaved(new(atFront?.Invoke(frontFilled) ?? Volume.Zero, atRear?.Invoke(rearFilled) ?? Volume.Zero));
        Length Both(Func<VolumeDemand, Volume> part) => RodFor(part, part);
        string? Missing(string what, Func<VolumeDemand, Volume> part) =>
            (linePressures.Front > Pressure.Zero && part(front) <= Volume.Zero,
                linePressures.Rear > Pressure.Zero && part(rear) <= Volume.Zero) switch
            {
                (true, true) => what,
                (true, false) => "front " + what,
                (false, true) => "rear " + what,
                _ => null,
            };
        (string Name, Length Rod, string? NotCounted)[] Rods() =>
        [
            ("push-rod gap", pushRodGap, null),
            ("compensating ports", ports, null),
            ("front pads or shoes to contact", RodFor(demand => demand.Clearance, null), null),
            ("rear pads or shoes to contact", RodFor(null, demand => demand.Clearance), null),
            .. front.DrumGrowth + rear.DrumGrowth > Volume.Zero
                ? new (string, Length, string?)[] { ("growth of the hot drums", Both(demand => demand.DrumGrowth), null) } : [],
            ("hoses", Both(demand => demand.Hoses), Missing("hoses", demand => demand.Hoses)),
            ("compliance of calipers and drums", Both(demand => demand.Compliance),
                Missing("calipers or drums", demand => demand.Compliance)),
            ("compression of the fluid", Both(demand => demand.Compression), Missing("fluid", demand => demand.Compression)),
            ("trapped air", Both(demand => demand.Air), null),
        ];
        Length rod = Both(demand => demand.Total) + ports + pushRodGap;
        return Of(pedal, master, rod, Rods, pushRodGap);
    }

    /// <summary>The travel budget with one circuit lost.</summary>
    /// <param name="pedal">The pedal.</param>
    /// <param name="master">The master cylinder.</param>
    /// <param name="lost">The circuit that is lost.</param>
    /// <param name="volumes">Volume each circuit would need; only the sound one's is looked at.</param>
    /// <param name="pushRodGap">Gap between the booster's push rod and the piston; not negative.</param>
    /// <returns>The budget; null when nothing is left to push.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="pushRodGap"/> is negative.</exception>
    public static PedalTravel? WithCircuitLost(Pedal pedal, MasterCylinder master, Axle lost, PerAxle<Volume> volumes,
        Length pushRodGap = default)
    {
        ArgumentNullException.ThrowIfNull(pedal);
        ArgumentNullException.ThrowIfNull(master);
        ArgumentOutOfRangeException.ThrowIfLessThan(pushRodGap, Length.Zero);
        if (master.RodTravelWithout(lost, volumes) is not { } travel)
        {
            return null;
        }

        Length idle = master.RodTravelWithout(lost, default)!.Value;
        return Of(pedal, master, travel + pushRodGap,
            () => [("push-rod gap", pushRodGap, null), ("lost circuit's piston to its end", idle, null),
                ("sound circuit", travel - idle, null)],
            pushRodGap);
    }

    private static PedalTravel Of(Pedal pedal, MasterCylinder master, Length rod,
        Func<(string Name, Length Rod, string? NotCounted)[]> rods, Length pushRodGap)
    {
        Length strokeLeft = master.Stroke - (rod - pushRodGap);
        Length? pad = pedal.PadTravel(rod);
        Length? left = pad is { } travel ? pedal.AvailableTravel - travel : null;
        double perRod = pad is { } p && rod > Length.Zero ? (p - pedal.FreePlay) / rod : 0;
        return new PedalTravel(() =>
            [new("free play", pedal.FreePlay),
                .. rods().Select(part => new PedalTravelPart(part.Name, part.Rod * perRod, part.NotCounted))])
        {
            RodTravel = rod,
            StrokeLeft = strokeLeft,
            Pad = pad,
            PadLeft = left,
        };
    }

    private static string? WarningFor(Length strokeLeft, Length? padLeft) =>
        padLeft is not { } left ? "The lever cannot push the rod so far: the geometry of the pedal ends first."
        : strokeLeft < Length.Zero
            ? "The master cylinder is at the end of its stroke before this pressure is reached: "
                + "the bore is too small for the volume, or there is air or too much clearance."
        : left < Length.Zero ? "The pedal is on the floor before this pressure is reached."
        : left < WantedReserve ? Invariant.Text(
            $"Long pedal: {Answers.Measure.Travel.In(UnitSystem.Si).Number(left.Meters)} mm "
                + $"({Answers.Measure.Travel.In(UnitSystem.Us).Number(left.Meters)} in) left to the floor, "
                + $"{WantedReserve.Millimeters:0} mm ({WantedReserve.Inches:0.0} in) are wanted (common practice).")
        : null;
}

/// <summary>One part of the pedal's travel.</summary>
/// <param name="Name">What uses it up, in words.</param>
/// <param name="Travel">Travel at the pad.</param>
/// <param name="NotCounted">What gives way there under pressure and has no number, on both axles or one; null when nothing.</param>
public readonly record struct PedalTravelPart(string Name, Length Travel, string? NotCounted = null);
