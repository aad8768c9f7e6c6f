using BrakeBalance.Summaries;

namespace BrakeBalance.Tests.Summaries;

/// <summary>The form in which a number that rests on a range is written.</summary>
public class BandTextTests
{
    [Theory]
    [InlineData("0.62 g", "0.62 g (0.58–0.66)", "0.58 g", "0.66 g", "0.60 g")]
    [InlineData("front 38.5 bar, rear 20 bar", "front 38 bar (36–41), rear 20 bar",
        "front 36.0 bar, rear 20 bar", "front 41.0 bar, rear 20 bar")]
    [InlineData("0.623", "0.62 (0.58–0.70)", "0.581", "0.702")]
    [InlineData("0.623", "0.623 (0.619–0.624)", "0.619", "0.624")]
    [InlineData("−0.3", "−0.3 (−0.5–0.2)", "−0.5", "0.2")]
    [InlineData("38.5", "38.5 (36.0–none)", "36.0", "–")]
    [InlineData("–", "– or 36.0 (36.0–36.4)", "36.0", "36.4")]
    [InlineData("front", "front or REAR", "REAR", "front")]
    [InlineData("0.077 m² surface", "0.077 m² (0.075–0.079) surface", "0.075 m² surface", "0.079 m² surface")]
    [InlineData("1 in", "1.00 in (0.94–1.04)", "0.94 in", "1.04 in")]
    [InlineData("the 1960s coupe", "the 1960s coupe", "the 1960s coupe")]
    [InlineData("0.15 g", "0.15 g (0.12–0.42)", "0.12 g", "0.42 g")]
    [InlineData("1.4 s", "1.4 s (0.8–4.6)", "0.8 s", "4.6 s")]
    [InlineData("0.37 g", "0.4 g (0.2–0.6)", "0.22 g", "0.61 g")]
    [InlineData("12 %", "12 % (10–14)", "10 %", "14 %")]
    [InlineData("front 0.77 g", "front 0.77 g (0.71–0.88) or REAR 0.85 g (0.81–0.85)",
        "front 0.71 g", "front 0.88 g", "REAR 0.85 g", "REAR 0.81 g")]
    [InlineData("Fail: 80 m; 70 m allowed.", "Fail: 80 m (80–90); 70 m allowed; within the file's ranges also pass: 60 m; 70 m allowed.",
        "Pass: 60 m; 70 m allowed.", "Fail: 90 m; 70 m allowed.")]
    public void A_number_that_differs_stands_with_its_band(string middle, string expected, params string[] drawn) =>
        Assert.Equal(expected, BandText.Of(middle, drawn, []));

    [Fact]
    public void A_number_that_rests_on_the_class_is_marked_and_no_other() =>
        Assert.Equal("0.62 g (0.58–0.66)* with 20 bar (18–22)",
            BandText.Of("0.62 g with 20 bar", ["0.58 g with 18 bar", "0.66 g with 22 bar"], ["0.61 g with 20 bar"]));

    [Fact]
    public void Sentences_of_one_form_keep_their_order()
    {
        Assert.Equal("200 N: 26 bar (25–27). 400 N: 38 bar (36–40).",
            BandText.Sentences("200 N: 26 bar. 400 N: 38 bar.", ["200 N: 25 bar. 400 N: 36 bar.", "200 N: 27 bar. 400 N: 40 bar."], []));
        Assert.Equal("It takes 580 N (520–650). The pedal is hard. Within the file's ranges it can also be: The pedal is fine.",
            BandText.Sentences("It takes 580 N. The pedal is hard.",
                ["It takes 520 N. The pedal is fine.", "It takes 650 N. The pedal is hard."], []));
    }

    [Fact]
    public void Notices_that_only_some_cars_get_follow_the_others() =>
        Assert.Equal(["lifts at 0.8 g (0.7–0.9)", "Within the file's ranges it can also be: rear first"],
            BandText.Each(["lifts at 0.8 g"], [["lifts at 0.7 g"], ["lifts at 0.9 g", "rear first"]], []));
}
