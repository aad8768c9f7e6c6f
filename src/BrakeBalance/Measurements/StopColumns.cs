namespace BrakeBalance.Measurements;

internal sealed record StopColumns
{
    public LogCells.Column<Speed>? Speed { get; private init; }

    public LogCells.Column<Force>? PedalForce { get; private init; }

    public LogCells.Column<Pressure>? FrontPressure { get; private init; }

    public LogCells.Column<Pressure>? RearPressure { get; private init; }

    public LogCells.Column<Pressure>? LockPressure { get; private init; }

    public LogCells.Column<Acceleration>? Deceleration { get; private init; }

    public LogCells.Column<Temperature>? Temperature { get; private init; }

    public LogCells.Column<double>? Turns { get; private init; }

    public int Locked { get; private init; }

    public int Surface { get; private init; }

    public int LoadCase { get; private init; }

    public static StopColumns In(LogCells cells) => new()
    {
        Speed = cells.Number(LogUnits.Speeds, "speed", "initial speed"),
        PedalForce = cells.Number(LogUnits.Forces, "pedal force", "pedal"),
        FrontPressure = cells.Number(LogUnits.Pressures, "front pressure", "front line pressure", "front"),
        RearPressure = cells.Number(LogUnits.Pressures, "rear pressure", "rear line pressure", "rear"),
        LockPressure = cells.Number(LogUnits.Pressures, "lock pressure", "front pressure at lock"),
        Deceleration = cells.Number(LogUnits.Accelerations, "deceleration", "decel", "mfdd", "mean fully developed deceleration"),
        Temperature = cells.Number(LogUnits.Temperatures, "temperature", "initial temperature"),
        Turns = cells.Number(LogUnits.Turns, "turns", "adjuster", "adjuster turns", "knob", "knob turns"),
        Locked = cells.Find("locked first", "locked", "first lock"),
        Surface = cells.Find("surface"),
        LoadCase = cells.Find("load case", "load"),
    };
}
