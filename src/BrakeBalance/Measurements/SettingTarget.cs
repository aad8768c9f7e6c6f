using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>
/// What test stops are made for: the setting at which both axles of the car as it truly is lock together in the condition that holds the
/// setting back, as a smooth function of what is not known.
/// </summary>
/// <remarks>
/// The condition is that which binds the car as its file has it, with the brakes normal, so that it stays the same from stop to stop. The
/// setting is not cut at what an adjuster reaches, so that its interval has a width there too.
/// </remarks>
internal sealed class SettingTarget
{
    private readonly StopModel _model;
    private readonly BalanceKernel _kernel;
    private readonly double _adhesion;
    private readonly double _slope;
    private readonly double? _barFactor;

    /// <summary>Prepares the target of an estimate.</summary>
    /// <param name="estimate">The estimate; one from no stops serves before the first.</param>
    public SettingTarget(CarEstimate estimate)
    {
        _model = estimate.Model;
        Vehicle vehicle = _model.Vehicle;
        Conditions conditions = vehicle.Conditions.AtMiddle;
        SettingLimit limit = SettingSearch.Limit(vehicle, conditions);
        Variable = limit.Variable;
        LoadCase load = limit.Binding is { } binding ? vehicle.LoadCase(binding.LoadCase) : conditions.LoadCasesOf(vehicle)[0];
        _adhesion = limit.Binding?.Adhesion ?? conditions.HighestAdhesion;
        _kernel = new BalanceKernel(vehicle, load, limit.Binding?.Speed.MetersPerSecond ?? 0);
        _slope = Math.Min(0.95, limit.Slope ?? SettingSearch.AddedSlope);
        _barFactor = Variable == SettingVariable.BalanceBar && vehicle.Hydraulics.Split is BalanceBarSplit bar
            ? bar.RearToFrontPressureRatio * bar.FrontForceShare / (1 - bar.FrontForceShare) : null;
    }

    /// <summary>What is set.</summary>
    public SettingVariable Variable { get; }

    /// <summary>Pascals of knee, or the front cylinder's share of the rod force [–].</summary>
    public double At(Vector<double> theta) => At(_model.Gains(theta));

    /// <summary>The same of a car whose friction and height are known.</summary>
    public double At(in CarGains car)
    {
        (double front, double rear) = _kernel.Together(car, _adhesion, _adhesion);
        return _barFactor is { } factor
            ? factor / (factor + Math.Max(0, rear) / Math.Max(1, front))
            : (rear - _slope * _kernel.Ratio * front) / (1 - _slope);
    }

    /// <summary>Median and 90 % interval over an estimate's draws, as <see cref="At(Vector{double})"/> counts it.</summary>
    public Interval<double> Interval(CarEstimate estimate) => estimate.Posterior.Interval(At);
}
