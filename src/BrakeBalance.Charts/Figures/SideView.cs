namespace BrakeBalance.Charts.Figures;

/// <summary>A car from the side with its nose to the left, to the scale of its own numbers, and forces on it as arrows.</summary>
internal static class SideView
{
    // Metres drawn for a force as great as the weight, and how far the body pitches at 1 g [rad]: about twice a road car's.
    private const double ForceScale = 0.95, Pitch = 0.07;

    /// <summary>Where the road begins [m] before the front axle and ends behind the rear one.</summary>
    public const double Before = 1.05, Behind = 1.5;

    /// <summary>Axes, road, body and wheels; the body pitched as it is at a deceleration.</summary>
    public static FigureBuilder Car(this FigureBuilder figure, BalanceModel model, double rate, string across = "Behind the front axle")
    {
        double wheelbase = model.Vehicle.Wheelbase.Meters, radius = model.Vehicle.Tyres.Front.LoadedRadius.Meters;
        double a = model.LoadCase.FrontAxleToCentreOfGravity.Meters, h = model.LoadCase.CentreOfGravityHeight.Meters;
        (double sin, double cos) = Math.SinCos(Pitch * rate);
        (double X, double Y)[] body =
        [
            (-0.72, 0.28), (-0.76, 0.58), (-0.55, 0.78), (0.22 * wheelbase, 0.92), (0.40 * wheelbase, 1.36), (0.74 * wheelbase, 1.36),
            (wheelbase + 0.05, 0.98), (wheelbase + 0.62, 0.92), (wheelbase + 0.68, 0.5), (wheelbase + 0.60, 0.28), (-0.72, 0.28),
        ];
        (double X, double Y)[] pitched = [.. body.Select(corner => (
            a + ((corner.X - a) * cos) - ((corner.Y - h) * sin), h + ((corner.X - a) * sin) + ((corner.Y - h) * cos)))];
        figure.ToScale()
            .X(across, "", Measure.Distance, -Before, wheelbase + Behind)
            .Y("Above the road", "", Measure.Distance, -1.15, 1.6)
            .Line("road", [-Before, wheelbase + Behind], [0, 0], Tone.Guide, Dash.Solid, 1, "")
            .Region("body", pitched.Select(corner => corner.X).ToArray(), pitched.Select(corner => corner.Y).ToArray(), Tone.Guide,
                Hatch.None, "")
            .Line("outline", pitched.Select(corner => corner.X).ToArray(), pitched.Select(corner => corner.Y).ToArray(), Tone.Guide,
                Dash.Solid, 1.5, "");
        foreach ((string name, double x) in new[] { ("front wheel", 0), ("rear wheel", wheelbase) })
        {
            double[] turn = [.. Enumerable.Range(0, 33).Select(i => i * Math.PI / 16)];
            figure.Line(name, turn.Select(at => x + (radius * Math.Sin(at))).ToArray(),
                turn.Select(at => radius * (1 - Math.Cos(at))).ToArray(), Tone.Guide, Dash.Solid, 1.5, "");
        }

        return figure;
    }

    /// <summary>Metres that a force is drawn.</summary>
    public static double Drawn(this BalanceModel model, Force force) => ForceScale * force.Newtons / model.Weight.Newtons;

    /// <summary>An arrow from a point; none where it has no length.</summary>
    public static FigureBuilder Arrow(this FigureBuilder figure, string label, string name, double x, double y, double along, double up,
        Tone tone, double labelAt)
    {
        double length = Math.Sqrt((along * along) + (up * up)), barb = Math.Min(0.12, 0.6 * length);
        if (length < 0.01)
        {
            return figure;
        }

        // One stroke: the shaft and, from its tip, both barbs.
        (double ux, double uy, double tipX, double tipY) = (barb * along / length, barb * up / length, x + along, y + up);
        return figure.Line(name, [x, tipX, tipX - ux - (uy / 2), tipX, tipX - ux + (uy / 2)],
            [y, tipY, tipY - uy + (ux / 2), tipY, tipY - uy - (ux / 2)], tone, Dash.Solid, 3, label, labelAt);
    }
}
