using BrakeBalance.Measurements;
namespace BrakeBalance.Tests.Measurements;
public class Dbg
{
    [Fact]
    public void D()
    {
        var track = new InventedTrack(CarEstimationTests.Coupe, 5);
        var dry = SurfaceCondition.Typical("dry"); var wet = SurfaceCondition.Typical("wet");
        var stops = CarEstimationTests.Day(track, dry, wet);
        var lines = new List<string>();
        foreach (var s in stops)
        {
            var m = new StopModel(CarEstimationTests.Coupe, [s], new EstimationOptions());
            lines.Add($"{s.LoadCase} {s.Surface} {s.Turns} pf {s.FrontPressure} pr {s.RearPressure} d {s.Deceleration} {s.Locked} f={m.NegativeLog(m.PriorMean)}");
        }
        Assert.Fail(string.Join("\n", lines));
    }
}
