namespace BrakeBalance.Tests.Oracle;

/// <summary>Drum-brake shoes by adding up the forces on little pieces of lining: friction force at the drum for each newton of one
/// wheel-cylinder piston.</summary>
/// <remarks>
/// The drum's centre is the origin, the shoe's supported end lies at (distance, 0), the shoe above the line; the piston pushes the other
/// end
/// straight up. The drum presses a piece of lining inwards and drags it along: towards the supported end under a leading shoe.
/// A rigid shoe presses with u cos θ + v sin θ, and not at all where that would be a pull.
/// </remarks>
internal static class PlainShoes
{
    private const int Pieces = 4000;

    /// <summary>A shoe on a fixed pin.</summary>
    /// <param name="friction">Lining friction.</param>
    /// <param name="leading">Whether the drum drags the shoe towards its pin.</param>
    /// <param name="radius">The drum's inside radius.</param>
    /// <param name="pivot">Distance of the pin from the drum's centre.</param>
    /// <param name="startDegrees">Where the lining begins, from the pin.</param>
    /// <param name="endDegrees">Where it ends.</param>
    /// <param name="moment">Moment of the pushing forces about the pin.</param>
    /// <returns>Friction force at the drum; not a positive number when the shoe locks by itself.</returns>
    public static double OnPin(double friction, bool leading, double radius, double pivot, double startDegrees, double endDegrees,
        double moment)
    {
        Sums sums = AddUp(friction, leading, radius, pivot, startDegrees, endDegrees, Math.Sin);
        return moment / sums.Resisting * sums.Friction;
    }

    /// <summary>A shoe that may slide along its support: the support pushes only the way the piston does, so the forces along the line
    /// must cancel.</summary>
    /// <returns>As for <see cref="OnPin"/>, with the moment about the supported end.</returns>
    public static double Sliding(double friction, bool leading, double radius, double support, double startDegrees, double endDegrees,
        double moment)
    {
        // Where the pressure is greatest is not known: turn it from the end away from the support towards the support until the forces
        // along the line cancel.
        double low = Math.PI;
        double high = 0;
        Sums At(double crown) => AddUp(friction, leading, radius, support, startDegrees, endDegrees, angle => Math.Max(0,
            Math.Cos(angle - crown)));
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            if (At(middle).Along > 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        Sums sums = At((low + high) / 2);
        return moment / sums.Resisting * sums.Friction;
    }

    /// <summary>A shoe whose lining is one short block: normal and friction force act at one point.</summary>
    /// <returns>Friction force at the drum for a pushing force of one.</returns>
    public static double Block(double friction, bool leading, double actuatingArm, double normalArm, double frictionArm,
        double liningDegrees)
    {
        // A wide block pressed straight on: cosine pressure, of which the part straight on makes the load and the whole makes the friction.
        double straight = 1;
        double rubbing = 1;
        if (liningDegrees > 0)
        {
            (straight, rubbing) = (0, 0);
            double wide = liningDegrees * Math.PI / 180;
            for (int i = 0; i < Pieces; i++)
            {
                double angle = (((i + 0.5) / Pieces) - 0.5) * wide;
                straight += Math.Cos(angle) * Math.Cos(angle);
                rubbing += Math.Cos(angle);
            }
        }

        double perNormalForce = friction * rubbing / straight;
        double normal = actuatingArm / (leading ? normalArm - (perNormalForce * frictionArm) : normalArm + (perNormalForce * frictionArm));
        return perNormalForce * normal;
    }

    private readonly record struct Sums(double Friction, double Resisting, double Along);

    private static Sums AddUp(double friction, bool leading, double radius, double support, double startDegrees, double endDegrees,
        Func<double, double> pressure)
    {
        double start = startDegrees * Math.PI / 180;
        double width = (endDegrees - startDegrees) * Math.PI / 180 / Pieces;
        double rubbing = 0;
        double resisting = 0;
        double along = 0;
        for (int i = 0; i < Pieces; i++)
        {
            double angle = start + ((i + 0.5) * width);
            double normal = pressure(angle) * radius * width;
            double drag = leading ? friction * normal : -friction * normal;
            (double x, double y) = (radius * Math.Cos(angle), radius * Math.Sin(angle));

            // Force on this piece: inwards, and along the drum (towards the support when leading).
            double forceX = (-normal * Math.Cos(angle)) + (drag * Math.Sin(angle));
            double forceY = (-normal * Math.Sin(angle)) - (drag * Math.Cos(angle));
            rubbing += friction * normal;
            along += forceX;
            resisting += ((x - support) * forceY) - (y * forceX);
        }

        return new Sums(rubbing, resisting, along);
    }
}
