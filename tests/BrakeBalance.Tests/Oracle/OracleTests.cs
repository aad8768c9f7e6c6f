namespace BrakeBalance.Tests.Oracle;

/// <summary>The oracle itself, against numbers that can be worked out with a pencil.</summary>
public class OracleTests
{
    private static readonly PlainAxle Plain = new() { WheelRadius = 0.3, TorquePerPascal = 10e-5 };

    private static readonly PlainCar Car = new()
    {
        Mass = 1000,
        Wheelbase = 2.5,
        FrontAxleToCentreOfGravity = 1.0,
        CentreOfGravityHeight = 0.5,
        Front = Plain,
        Rear = Plain with { TorquePerPascal = 5e-5 },
        RearToFrontMasterPressure = 1,
        HighestPressure = 200e5,
    };

    [Fact]
    public void Braking_moves_load_by_mass_times_deceleration_times_height_over_wheelbase()
    {
        // 60 bar: front 2 · 10 · 60 / 0.3 = 4000 N, rear 2000 N; 6000 N · 0.5 / 2.5 = 1200 N moves; static 5883.99 and 3922.66 N.
        PlainState at = Textbook.At(Car, 60e5, 0);
        Assert.Equal(4000, at.FrontForce, 1e-9);
        Assert.Equal(2000, at.RearForce, 1e-9);
        Assert.Equal(5883.99 + 1200, at.FrontLoad, 1e-6);
        Assert.Equal(3922.66 - 1200, at.RearLoad, 1e-6);
        Assert.Equal(6000 / 9806.65, at.BrakingRate, 1e-9);
    }

    [Fact]
    public void The_front_locks_where_its_force_reaches_adhesion_times_load()
    {
        // T = 1.5 T₁; T₁ = 0.5 (5883.99 + 0.2 · 1.5 T₁) → T₁ = 2941.995 / 0.85 = 3461.17 N at 3461.17 · 0.3 / 20 = 51.918 bar;
        // rear 1730.59 N on 3922.66 − 1038.35 = 2884.31 N: 0.600 > 0.5, so the rear is first:
        // T₂ = 0.5 (3922.66 − 0.2 · 3 T₂) → T₂ = 1961.33 / 1.3 = 1508.72 N at 1508.72 · 0.3 / 10 = 45.262 bar.
        PlainLock found = Textbook.FirstLock(Car, 0.5, 0)!;
        Assert.True(found.RearIsFirst);
        Assert.Equal(45.2615e5, found.At.Pressure, 20.0);

        // Both at their limit brake with 0.5 m g; used are 3 · 1508.72 = 4526.15 of 4903.325 N.
        Assert.Equal(4526.146 / 4903.325, found.Efficiency, 1e-5);
    }

    [Fact]
    public void A_knee_in_the_rear_line_makes_the_front_lock_first()
    {
        // Limited to 30 bar the rear brakes with 1000 N: T₁ = 0.5 (5883.99 + 0.2 (T₁ + 1000)) → T₁ = 3041.995 / 0.9 = 3379.99 N at
        // 50.6999 bar.
        PlainLock found = Textbook.FirstLock(Car with { Rear = Car.Rear with { Valves = [new LimitAt(30e5)] } }, 0.5, 0)!;
        Assert.False(found.RearIsFirst);
        Assert.Equal(50.69992e5, found.At.Pressure, 20.0);
    }

    [Fact]
    public void A_load_sensing_valve_settles_where_its_own_braking_leaves_the_load()
    {
        // Knee 40 bar + 0.01 bar/N (N₂ − 3000 N), slope 0, 60 bar in: T₂ = 10 p₂/0.3 per bar; N₂ = 3922.66 − 0.2 (4000 +
        // 33.3333 p₂); p₂ = 40 + 0.01 (122.66 − 6.66667 p₂) → p₂ = 41.2266 / 1.066667 = 38.6499 bar.
        PlainState at = Textbook.At(Car with { Rear = Car.Rear with { Valves = [new LoadSensing(40e5, 3000, 1000, 0, 0)] } }, 60e5, 0);
        Assert.Equal(38.64994e5, at.RearLinePressure, 20.0);
    }

    [Fact]
    public void A_short_block_and_a_lining_of_no_width_on_a_pin_are_one()
    {
        // At 90° from the pin: normal force has the arm of the pin's distance, friction that of the drum's radius. 0.4 · 0.2 / (0.1 −
        // 0.4 · 0.12) = 1.53846.
        double pin = PlainShoes.OnPin(0.4, leading: true, 0.12, 0.1, 89.99, 90.01, 0.2);
        Assert.Equal(0.08 / 0.052, pin, 1e-4);
        Assert.Equal(0.08 / 0.052, PlainShoes.Block(0.4, leading: true, 0.2, 0.1, 0.12, 0), 1e-12);
        Assert.Equal(0.08 / 0.148, PlainShoes.Block(0.4, leading: false, 0.2, 0.1, 0.12, 0), 1e-12);
    }
}
