using BrakeBalance.Brakes;
using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Makes what a stop needs from a complete document, checking what its entries say of one another.</summary>
internal sealed class DynamicsBuilder(List<Problem> problems)
{
    /// <summary>Wheels, tyres and heat of one axle.</summary>
    public AxleDynamics Axle(AxleDocument document, string path) => new()
    {
        WheelInertia = document.WheelInertia,
        Track = document.Track,
        BrakeImbalance = document.BrakeImbalance ?? 0,
        SlipCurve = document.Tyre!.SlipCurve is { } known ? PublishedSlipCurves.All.FirstOrDefault(curve => curve.Name == known) : null,
        LateralStiffnessRatio = document.Tyre.LateralStiffnessRatio,
        Heat = document.Heat is { } heat ? Heat(heat, DocumentReader.Join(path, "heat")) : null,
    };

    private BrakeThermalData? Heat(HeatDocument heat, string path)
    {
        FrictionCurve? friction = null;
        if (heat is { FrictionMaterial: not null, FrictionPoints: not null })
        {
            problems.Add(new(path, "says twice how friction changes with temperature.", "one of frictionMaterial and frictionPoints"));
        }
        else if (heat.FrictionMaterial is { } name)
        {
            friction = FrictionMaterial.Named(name).Friction;
        }
        else if (heat.FrictionPoints is { } points)
        {
            try
            {
                friction = FrictionCurve.Through(points.Select(point => (point.Temperature!.Value, point.Friction!.Value)));
            }
            catch (ArgumentException fault)
            {
                problems.Add(new(DocumentReader.Join(path, "frictionPoints"), Problem.WordsOf(fault), "points with rising temperatures"));
            }
        }

        return new BrakeThermalData
        {
            RingMass = heat.RingMass!.Value,
            HatMass = heat.HatMass ?? UnitsNet.Mass.Zero,
            CoolingArea = heat.CoolingArea!.Value,
            ConvectionAtTenMetresPerSecond = heat.ConvectionAtTenMetresPerSecond,
            Friction = friction,
            FrictionIsMeasured = heat.FrictionPoints is not null,
        };
    }
}
