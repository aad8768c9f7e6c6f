using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Peaks of pure braking at 2, 4 and 6 kN that the coefficients of two public tyre files give (test fixtures of the repository
/// matheusft/MFeval_julia, MIT licence: Magic Formula 6.1, 255/55; Magic Formula 5.2, 235/85). The files were read and evaluated in an
/// earlier
/// search; here only its results are used. About 3 % of the peak is lost for each 2 kN, as a straight line of load has it.
/// </summary>
[Source("Magic Formula tyre files, peaks as evaluated in an earlier search", Reading.SecondHand)]
public sealed class TyreFileLoadDependence
{
    // The loss is fitted to the outer two peaks, so each point may miss by half a unit of the printed value and half a unit of the fit.
    [Theory]
    [InlineData(1.175, 1.142, 1.108)]
    [InlineData(0.931, 0.914, 0.896)]
    public void Peak_falls_in_a_straight_line_with_load(double atTwo, double atFour, double atSix)
    {
        double loss = (atTwo - atSix) / atFour;
        SlipCurve tyre = (PublishedSlipCurves.DryAsphalt with
        {
            LoadSensitivity = new LoadSensitivity { ReferenceLoad = Force.FromKilonewtons(4), LossPerDoubling = loss },
        }).ScaledToPeak(atFour, Force.FromKilonewtons(4));
        Assert.Equal(atTwo, tyre.PeakAdhesion(Force.FromKilonewtons(2)), 0.001);
        Assert.Equal(atFour, tyre.PeakAdhesion(Force.FromKilonewtons(4)), 1e-9);
        Assert.Equal(atSix, tyre.PeakAdhesion(Force.FromKilonewtons(6)), 0.001);
        Assert.InRange(loss, 0.035, 0.065);
    }

    // Both files' peaks move to smaller slips with load, by about as much as those of the 1989 set of coefficients: another tyre, so
    // within 0.1.
    [Theory]
    [InlineData(0.149, 0.127, 0.112)]
    [InlineData(0.309, 0.242, 0.205)]
    public void Peak_slip_falls_with_load_as_in_the_1989_coefficients(double atTwo, double atFour, double atSix)
    {
        SlipCurve tyre = PublishedSlipCurves.PassengerCarTyre;
        double[] ours = [.. new[] { 2.0, 4, 6 }.Select(kilonewtons => tyre.PeakSlip(Force.FromKilonewtons(kilonewtons)))];
        double[] theirs = [atTwo, atFour, atSix];
        Assert.All([1, 2], i => Assert.Equal(theirs[i] / theirs[i - 1], ours[i] / ours[i - 1], 0.1));
        Assert.True(ours[0] > ours[1] && ours[1] > ours[2]);
    }
}
