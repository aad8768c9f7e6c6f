using BrakeBalance.Brakes;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

/// <summary>
/// The closed forms against statics: the lining is cut into many pieces, each with its own normal and friction force in the plane of the
/// brake,
/// and the equilibrium equations of the shoes are solved as a linear system. Pieces that would pull are released until none does.
/// </summary>
public class ShoeEquilibriumTests
{
    private const double Radius = 0.127;
    private const int Pieces = 4000;

    [Theory]
    [InlineData(0.15, 60, 120)]
    [InlineData(0.30, 60, 120)]
    [InlineData(0.30, 40, 130)]
    [InlineData(0.45, 40, 130)]
    [InlineData(0.60, 25, 140)]
    public void Sliding_shoes_leading_and_trailing(double friction, double liningStart, double liningEnd)
    {
        var shoes = new ShoeGeometry
        {
            PivotDistance = Length.FromMeters(0.100),
            ActuatingArm = Length.FromMeters(0.185),
            Lining = LiningArc.FromDegrees(liningStart, liningEnd),
            Support = ShoeSupport.Sliding,
        };
        (double leading, _) = FreeShoe(friction, liningStart, liningEnd, 0.100, 0.085, leading: true);
        (double trailing, _) = FreeShoe(friction, liningStart, liningEnd, 0.100, 0.085, leading: false);
        Length drum = Length.FromMeters(Radius);
        Assert.Equal(1, shoes.LeadingShoeFactor(friction, drum) / leading, 2e-3);
        Assert.Equal(1, shoes.TrailingShoeFactor(friction, drum) / trailing, 2e-3);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.38)]
    [InlineData(0.50)]
    public void Duo_servo_shoes_and_the_torque_on_the_anchor(double friction)
    {
        var geometry = new DuoServoGeometry
        {
            CylinderDistance = Length.FromMeters(0.085),
            AnchorDistance = Length.FromMeters(0.112),
            LinkDistance = Length.FromMeters(0.110),
            PrimaryLining = LiningArc.FromDegrees(45, 125),
            SecondaryLining = LiningArc.FromDegrees(35, 125),
        };
        Length drum = Length.FromMeters(Radius);
        (double primary, double link) = FreeShoe(friction, 45, 125, 0.110, 0.085, leading: true);

        // Secondary shoe: anchor at (0, A), link at (0, -l), cylinder at (0, a); drum turning anticlockwise, lining at 90° - θ.
        (double fx, double anchorMoment, double drumMoment) unit = (0, 0, 0);
        foreach (double theta in Midpoints(35, 125, out double width))
        {
            double at = (Math.PI / 2) - theta;
            double normal = Math.Sin(theta) * Radius * width;
            double x = normal * (-Math.Cos(at) - (friction * Math.Sin(at)));
            double y = normal * (-Math.Sin(at) + (friction * Math.Cos(at)));
            (double px, double py) = (Radius * Math.Cos(at), Radius * Math.Sin(at));
            unit.fx += x;
            unit.anchorMoment += (px * y) - ((py - 0.112) * x);
            unit.drumMoment += (px * y) - (py * x);
        }

        double applied = -(0.085 - 0.112) - (link * (-0.110 - 0.112));
        double scale = -applied / unit.anchorMoment;
        double secondary = scale * unit.drumMoment / Radius;
        Assert.Equal(1, geometry.PrimaryShoeFactor(friction, drum) / primary, 2e-3);
        Assert.Equal(1, geometry.LinkForceRatio(friction, drum) / link, 2e-3);
        Assert.Equal(1, geometry.SecondaryShoeFactor(friction, drum) / secondary, 2e-3);

        // The anchor alone holds both shoes against turning with the drum.
        double anchorForce = -(1 + link + (scale * unit.fx));
        Assert.Equal((primary + secondary) * Radius, anchorForce * 0.112, 2e-3 * (primary + secondary) * Radius);
    }

    // A shoe on the left of the drum, drum anticlockwise for a leading shoe (support below) and clockwise for a trailing one.
    // Unknowns: pressure u cos φ + v sin φ and the support force S; a unit cylinder force pushes left at height a, S pushes left at
    // height -l.
    private static (double Factor, double Support) FreeShoe(double friction, double start, double end, double support, double cylinder,
        bool leading)
    {
        double turning = leading ? 1 : -1;
        double[] angles = [.. Midpoints(start, end, out double width).Select(theta => (1.5 * Math.PI) - theta)];
        bool[] carries = [.. angles.Select(_ => true)];
        for (int pass = 0; pass < 500; pass++)
        {
            Matrix<double> equations = Matrix<double>.Build.Dense(3, 3);
            for (int i = 0; i < angles.Length; i++)
            {
                if (!carries[i])
                {
                    continue;
                }

                (double c, double s) = (Math.Cos(angles[i]), Math.Sin(angles[i]));
                double x = (-c - (turning * friction * s)) * Radius * width;
                double y = (-s + (turning * friction * c)) * Radius * width;
                double moment = turning * friction * Radius * Radius * width;
                double[] force = [x, y, moment];
                for (int row = 0; row < 3; row++)
                {
                    equations[row, 0] += force[row] * c;
                    equations[row, 1] += force[row] * s;
                }
            }

            equations[0, 2] = -1;
            equations[2, 2] = -support;
            Vector<double> solution = equations.Solve(Vector<double>.Build.Dense([1, 0, -cylinder]));
            double Pressure(double angle) => (solution[0] * Math.Cos(angle)) + (solution[1] * Math.Sin(angle));
            bool[] next = [.. angles.Select(angle => Pressure(angle) > 0)];
            if (next.SequenceEqual(carries))
            {
                double torque = angles.Where((_, i) => carries[i]).Sum(angle => friction * Pressure(angle) * Radius * Radius * width);
                return (torque / Radius, solution[2]);
            }

            carries = next;
        }

        throw new InvalidOperationException("The set of carrying pieces did not settle.");
    }

    private static double[] Midpoints(double startDegrees, double endDegrees, out double width)
    {
        (double start, double end) = (startDegrees * Math.PI / 180, endDegrees * Math.PI / 180);
        double step = (end - start) / Pieces;
        width = step;
        return [.. Enumerable.Range(0, Pieces).Select(i => start + ((i + 0.5) * step))];
    }
}
