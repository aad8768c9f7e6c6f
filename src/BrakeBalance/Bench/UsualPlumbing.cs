namespace BrakeBalance.Bench;

/// <summary>The two usual layouts of a pump-fed booster's plumbing, to compare their returns.</summary>
/// <remarks>
/// Pump with its reservoir built on, booster, steering gear. Source: layouts in archived service texts; tee common practice.
/// </remarks>
public static class UsualPlumbing
{
    /// <summary>A return of its own for booster and gear each.</summary>
    /// <param name="bore">Inner diameter of every line; 2 to 50 mm.</param>
    /// <param name="length">Length of each return; above zero, to 20 m.</param>
    /// <param name="relief">Pressure at which the pump's relief valve opens, gauge; above zero.</param>
    public static PlumbingGraph SeparateReturns(Length bore, Length length, Pressure relief) => Make(
        [], [Line("gear.return", "pump.return1", bore, length), Line("booster.return", "pump.return2", bore, length)], bore, relief);

    /// <summary>Both returns joined by a tee, the booster on its straight run, halfway to the reservoir.</summary>
    /// <param name="bore">Inner diameter of every line; 2 to 50 mm.</param>
    /// <param name="length">Length from booster and gear to the reservoir; above zero, to 20 m.</param>
    /// <param name="relief">Pressure at which the pump's relief valve opens, gauge; above zero.</param>
    public static PlumbingGraph JoinedReturns(Length bore, Length length, Pressure relief) => Make(
        [new PlumbingNode { Name = "tee", Part = PlumbingPart.Tee }],
        [Line("gear.return", "tee.branch", bore, length / 2), Line("booster.return", "tee.run1", bore, length / 2),
            Line("tee.run2", "pump.return1", bore, length / 2)],
        bore,
        relief);

    private static PlumbingGraph Make(PlumbingNode[] more, PlumbingLine[] returns, Length bore, Pressure relief) => new()
    {
        Nodes =
        [
            new PlumbingNode { Name = "pump", Part = PlumbingPart.PumpWithReservoir },
            new PlumbingNode { Name = "booster", Part = PlumbingPart.Booster },
            new PlumbingNode { Name = "gear", Part = PlumbingPart.SteeringGear },
            .. more,
        ],
        Lines =
        [
            Line("pump.outlet", "booster.pressure", bore, Length.FromMeters(0.8)) with { WorkingPressure = relief * 2 },
            Line("booster.gear", "gear.pressure", bore, Length.FromMeters(0.6)) with { WorkingPressure = relief * 2 },
            .. returns,
        ],
        ReliefPressure = relief,
    };

    private static PlumbingLine Line(string from, string to, Length bore, Length length) => new()
    {
        From = from,
        To = to,
        Bore = bore,
        Length = length,
    };
}
