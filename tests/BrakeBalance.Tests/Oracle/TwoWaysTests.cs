using FsCheck.Xunit;

namespace BrakeBalance.Tests.Oracle;

/// <summary>The textbook and each way of asking the library give one answer, on the same random cars in every run.</summary>
/// <remarks>The seeds are fixed so that a failure can be repeated.</remarks>
[Properties(Arbitrary = [typeof(AnyCase)], MaxTest = 200)]
public class TwoWaysTests
{
    [Property(Replay = "10,11")]
    public void The_state_at_a_pressure_is_the_textbooks(BrakingCase given) => TwoWays.State(given);

    [Property(Replay = "20,21")]
    public void The_pressure_for_a_braking_rate_is_the_textbooks(BrakingCase given) => TwoWays.Rate(given);

    [Property(Replay = "30,31")]
    public void The_first_lock_up_of_the_balance_is_the_textbooks(BrakingCase given) => TwoWays.Balance(given);

    [Property(Replay = "40,41")]
    public void The_summary_tells_the_textbooks_lock_ups_and_pressures(BrakingCase given) => TwoWays.Summary(given);

    [Property(Replay = "50,51")]
    public void A_setting_is_judged_as_the_textbook_judges_it(BrakingCase given) => TwoWays.Setting(given);

    [Property(Replay = "60,61")]
    public void The_greatest_safe_knee_is_the_greatest_in_the_textbook(BrakingCase given) => TwoWays.GreatestKnee(given);

    [Property(Replay = "70,71")]
    public void Draws_without_scatter_give_the_textbooks_axle_and_efficiency(BrakingCase given) => TwoWays.Draws(given);

    [Property(Replay = "80,81")]
    public void A_slow_stop_locks_as_the_textbook_says(BrakingCase given) => TwoWays.Stop(given);

    [Property(Replay = "90,91")]
    public void The_pressure_of_a_threshold_driver_is_the_textbooks(BrakingCase given) => TwoWays.Threshold(given);
}
