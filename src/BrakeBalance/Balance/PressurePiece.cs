using BrakeBalance.Hydraulics;

namespace BrakeBalance.Balance;

/// <summary>A range of front master pressure over which everything is a straight line: value = first + second · pressure.</summary>
internal struct PressurePiece
{
    /// <summary>First and last pressure in pascals; the last may be infinite.</summary>
    public double From, To;

    /// <summary>Line pressure at the front brakes.</summary>
    public double FrontLine0, FrontLine1;

    /// <summary>Line pressure at the rear brakes.</summary>
    public double RearLine0, RearLine1;

    /// <summary>Braking force of the front axle, engine included.</summary>
    public double Front0, Front1;

    /// <summary>Braking force of the rear axle, engine included.</summary>
    public double Rear0, Rear1;

    /// <summary>Load on the rear axle.</summary>
    public double Load0, Load1;

    /// <summary>One bit for each valve that holds pressure back.</summary>
    public uint Holding;
}

/// <summary>Walks along the characteristic from no pressure upwards, from bend to bend.</summary>
/// <remarks>
/// Each valve is on one of its lines, each brake below or above its threshold, the rear wheels on the road or not. As long as that stays,
/// line pressures and forces are c₀ + c₁p + c_N N₂, and the rear load follows from one linear equation; the next bend is where the
/// first of these conditions ends. More pressure never loads the rear axle, so the walk never turns back.
/// </remarks>
internal ref struct PressureWalk
{
    private const byte Passes = 0, First = 1, Second = 2;
    private readonly BalanceKernel _kernel;
    private readonly ReadOnlySpan<ValveLaw> _laws;
    private readonly Span<byte> _states;
    private readonly double _ratio, _tau, _frontGain, _rearGain;
    private double _from;
    private bool _frontActs, _rearActs, _lifted;
    private int _left;

    // The first condition that ends: a valve, or one of those below.
    private const int FrontBrake = -1, RearBrake = -2, LiftOff = -3, Nothing = -4;
    private double _next;
    private int _which;
    private byte _becomes;

    /// <summary>The piece reached.</summary>
    public PressurePiece Current;

    /// <summary>Begins at no pressure.</summary>
    public PressureWalk(BalanceKernel kernel, in CarGains car, ReadOnlySpan<ValveLaw> laws, double ratio, Span<byte> states)
    {
        (_kernel, _ratio) = (kernel, ratio);
        _laws = laws;
        _states = states[..laws.Length];
        (_frontGain, _rearGain, _tau) = (car.Front, car.Rear, kernel.Tau * car.Height);
        _lifted = kernel.RearStatic - _tau * (kernel.Engine.Front + kernel.Engine.Rear + kernel.External) <= 0;
        _states.Clear();
    }

    /// <summary>Goes on to the next piece.</summary>
    /// <returns>False beyond the last, which has no end.</returns>
    public bool MoveNext()
    {
        _left = 64 + 16 * _laws.Length;
        do
        {
            if (double.IsPositiveInfinity(_from))
            {
                return false;
            }

            Lay();
            _from = Current.To;
        }
        while (Current.To <= Current.From);

        return true;
    }

    /// <summary>Where the walk stands, to come back to; the valves' states are kept beside it.</summary>
    public readonly WalkMark Mark(Span<byte> states)
    {
        _states.CopyTo(states);
        return new(_from, _frontActs, _rearActs, _lifted);
    }

    /// <summary>Goes back to a mark.</summary>
    public void Return(in WalkMark mark, ReadOnlySpan<byte> states)
    {
        states[.._states.Length].CopyTo(_states);
        (_from, _frontActs, _rearActs, _lifted) = (mark.From, mark.FrontActs, mark.RearActs, mark.Lifted);
    }

    /// <summary>Whether a valve has not held anything back so far.</summary>
    public readonly bool StillPasses(int valve) => _states[valve] == Passes;

    private void Lay()
    {
        BalanceKernel kernel = _kernel;
        int count = kernel.FrontValves;
        (double f0, double f1, double fn) = Line(0, count, 1);
        (double r0, double r1, double rn) = Line(count, _laws.Length, _ratio);
        double g1 = _frontActs ? _frontGain : 0, g2 = _rearActs ? _rearGain : 0;
        double n0 = 0, n1 = 0;
        if (!_lifted)
        {
            double sum = g1 * (f0 - kernel.Threshold.Front) + kernel.Engine.Front
                + g2 * (r0 - kernel.Threshold.Rear) + kernel.Engine.Rear + kernel.External;
            double inverse = 1 / (1 + _tau * (g1 * fn + g2 * rn));
            n0 = (kernel.RearStatic - _tau * sum) * inverse;
            n1 = -_tau * (g1 * f1 + g2 * r1) * inverse;
        }

        Current.From = _from;
        (Current.Load0, Current.Load1) = (n0, n1);
        (Current.FrontLine0, Current.FrontLine1) = (f0 + fn * n0, f1 + fn * n1);
        (Current.RearLine0, Current.RearLine1) = (r0 + rn * n0, r1 + rn * n1);
        Current.Front0 = g1 * (Current.FrontLine0 - kernel.Threshold.Front) + kernel.Engine.Front;
        Current.Front1 = g1 * Current.FrontLine1;
        Current.Rear0 = g2 * (Current.RearLine0 - kernel.Threshold.Rear) + kernel.Engine.Rear;
        Current.Rear1 = g2 * Current.RearLine1;

        (_next, _which, Current.Holding) = (double.PositiveInfinity, Nothing, 0);
        Bends(0, count, 1, n0, n1);
        Bends(count, _laws.Length, _ratio, n0, n1);
        Threshold(FrontBrake, _frontActs, Current.FrontLine0 - kernel.Threshold.Front, Current.FrontLine1);
        Threshold(RearBrake, _rearActs, Current.RearLine0 - kernel.Threshold.Rear, Current.RearLine1);
        if (!_lifted)
        {
            Consider(Above(-n0, -n1), LiftOff, 0);
        }

        if (--_left < 0)
        {
            (_next, _which) = (double.PositiveInfinity, Nothing);
        }

        Current.To = _next;
        switch (_which)
        {
            case FrontBrake:
                _frontActs = !_frontActs;
                break;
            case RearBrake:
                _rearActs = !_rearActs;
                break;
            case LiftOff:
                _lifted = true;
                break;
            case >= 0:
                _states[_which] = _becomes;
                break;
        }
    }

    // Outlet of a chain as c₀ + c₁p + c_N N₂.
    private readonly (double, double, double) Line(int first, int end, double ratio)
    {
        double c0 = 0, c1 = ratio, cn = 0;
        for (int i = first; i < end; i++)
        {
            ref readonly ValveLaw law = ref _laws[i];
            (c0, c1, cn) = _states[i] switch
            {
                First => (law.A0 + law.A1 * c0, law.A1 * c1, law.A1 * cn),
                Second => (law.B0 + law.B1 * c0, law.B1 * c1, law.B1 * cn + law.BLoad),
                _ => (c0, c1, cn),
            };
        }

        return (c0, c1, cn);
    }

    private void Bends(int first, int end, double ratio, double n0, double n1)
    {
        double x0 = 0, x1 = ratio;
        for (int i = first; i < end; i++)
        {
            ref readonly ValveLaw law = ref _laws[i];
            if (double.IsPositiveInfinity(law.A0))
            {
                continue;
            }

            double a0 = law.A0 + law.A1 * x0, a1 = law.A1 * x1;
            bool two = law.B0 > double.NegativeInfinity;
            double b0 = two ? law.B0 + law.B1 * x0 + law.BLoad * n0 : 0, b1 = two ? law.B1 * x1 + law.BLoad * n1 : 0;
            switch (_states[i])
            {
                case Passes:
                    double over = Above(x0 - a0, x1 - a1);
                    over = two ? Math.Max(over, Above(x0 - b0, x1 - b1)) : over;
                    double at = over < _next ? over : 0;
                    bool second = two && (b0 + b1 * at - a0 - a1 * at is var more && (more > Little || (more > -Little && b1 > a1)));
                    Consider(over, i, second ? Second : First);
                    break;
                case First:
                    Current.Holding |= 1u << Math.Min(31, i);
                    Consider(Falls(x0 - a0, x1 - a1), i, Passes);
                    if (two)
                    {
                        Consider(Rises(b0 - a0, b1 - a1), i, Second);
                    }

                    (x0, x1) = (a0, a1);
                    break;
                default:
                    Current.Holding |= 1u << Math.Min(31, i);
                    Consider(Falls(x0 - b0, x1 - b1), i, Passes);
                    Consider(Rises(a0 - b0, a1 - b1), i, First);
                    (x0, x1) = (b0, b1);
                    break;
            }
        }
    }

    private const double Little = 1e-3;

    private void Threshold(int which, bool acts, double over0, double over1) =>
        Consider(acts ? Falls(over0, over1) : Rises(over0, over1), which, 0);

    private void Consider(double pascals, int which, byte becomes)
    {
        if (pascals < _next)
        {
            (_next, _which, _becomes) = (pascals, which, becomes);
        }
    }

    // Where a line leaves zero upwards: only its direction counts, so that rounding at a bend does not turn the walk.
    private readonly double Rises(double v0, double v1) => v1 > 0 ? Math.Max(_from, -v0 / v1) : double.PositiveInfinity;

    private readonly double Falls(double v0, double v1) => Rises(-v0, -v1);

    // The same for a line that may lie above already.
    private readonly double Above(double v0, double v1) =>
        v1 > 0 ? Math.Max(_from, -v0 / v1) : v0 + v1 * _from > Little ? _from : double.PositiveInfinity;
}

/// <summary>A place on a walk.</summary>
internal readonly record struct WalkMark(double From, bool FrontActs, bool RearActs, bool Lifted);
