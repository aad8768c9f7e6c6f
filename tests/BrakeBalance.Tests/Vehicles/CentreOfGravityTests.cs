using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Where the centre of gravity may lie.</summary>
public class CentreOfGravityTests
{
    [Theory]
    [InlineData("\"mass\": \"1350 kg\", \"frontAxleToCentreOfGravity\": \"2.59 m\"", "loadCases[0].frontAxleToCentreOfGravity", "0.4 %")]
    [InlineData("\"mass\": \"1350 kg\", \"frontAxleToCentreOfGravity\": \"0.10 m\"", "loadCases[0].frontAxleToCentreOfGravity", "96.2 %")]
    [InlineData("\"frontAxleMass\": \"50 kg\", \"rearAxleMass\": \"2000 kg\"", "loadCases[0].frontAxleMass", "2.4 %")]
    public void A_car_that_stands_on_one_axle_is_refused(string load, string path, string share)
    {
        string text = StarterFile.Text().Replace("\"mass\": \"1350 kg\",", load + ",", StringComparison.Ordinal)
            .Replace("\"frontShare\": 0.53,", "", StringComparison.Ordinal);
        Problem problem = Assert.Single(VehicleFile.TryRead(text).Problems);
        Assert.Equal(path, problem.Path);
        Assert.Contains(share, problem.What);
    }
}
