namespace BrakeBalance.Stops;

/// <summary>A system of ordinary differential equations that the integrator steps, with events.</summary>
internal interface IStiffSystem
{
    /// <summary>How many of the leading states take part in error control; those after them are sums on the side.</summary>
    int Controlled { get; }

    /// <summary>Rates of change, and for each state its own decay rate (the negative diagonal of the Jacobian), or zero.</summary>
    void Rates(double time, ReadOnlySpan<double> state, Span<double> rate, Span<double> decay);

    /// <summary>Event functions; an event is a fall from above zero to zero or below.</summary>
    void Events(double time, ReadOnlySpan<double> state, Span<double> values);

    /// <summary>Called after every accepted step.</summary>
    void Accepted(double time, ReadOnlySpan<double> state);
}

/// <summary>Steps stiff systems with step-size control and locates events, without allocating.</summary>
/// <param name="buffer">At least <see cref="BufferLength"/> numbers.</param>
/// <param name="size">Number of states.</param>
/// <param name="events">Number of event functions.</param>
/// <param name="relativeTolerance">Error allowed a step, relative to one plus the state's size.</param>
/// <param name="largestStep">Longest step in seconds.</param>
/// <remarks>
/// <para>Two-stage Rosenbrock method of second order, L-stable with γ = 1 − 1/√2; it keeps its order for any approximate Jacobian, so
/// the diagonal that the system hands over is enough. The embedded first-order result gives the error estimate.</para>
/// <para>MathNet.Numerics offers fixed-step explicit solvers only (OdeSolvers): they allocate each step, locate no events, and a rolling
/// wheel's slip (time constants of 0.1 ms near standstill) would force steps of microseconds. They serve as the reference in tests.</para>
/// <para>Source: Verwer, Spee, Blom and Hundsdorfer, A second-order Rosenbrock method applied to photochemical dispersion problems, SIAM
/// J. Sci. Comput. 20 (1999) (from memory).</para>
/// </remarks>
internal ref struct StiffIntegrator(Span<double> buffer, int size, int events, double relativeTolerance, double largestStep)
{
    private const double Gamma = 1 - 0.70710678118654752440;
    private const int MostSteps = 200_000;

    private readonly Span<double> _k1 = buffer[..size];
    private readonly Span<double> _k2 = buffer.Slice(size, size);
    private readonly Span<double> _decay = buffer.Slice(2 * size, size);
    private readonly Span<double> _stage = buffer.Slice(3 * size, size);
    private readonly Span<double> _next = buffer.Slice(4 * size, size);
    private readonly Span<double> _trial = buffer.Slice(5 * size, size);
    private readonly Span<double> _before = buffer.Slice(6 * size, events);
    private readonly Span<double> _after = buffer.Slice(6 * size + events, events);
    private readonly double _relative = relativeTolerance;
    private readonly double _largestStep = largestStep;
    private double _step = 1e-4;

    /// <summary>Numbers needed in the buffer.</summary>
    public static int BufferLength(int size, int events) => 6 * size + 2 * events;

    /// <summary>Accepted steps so far.</summary>
    public int Steps { get; private set; }

    /// <summary>Steps to <paramref name="end"/> or to the first event.</summary>
    /// <returns>The index of the event that stopped it, or −1 at <paramref name="end"/>.</returns>
    public int Advance<T>(ref T system, ref double time, Span<double> state, double end) where T : struct, IStiffSystem
    {
        system.Events(time, state, _before);
        while (time < end)
        {
            double step = Math.Min(Math.Min(_step, _largestStep), end - time);
            double error = Step(ref system, time, step, state, _next);
            if (error > 1 && step > 1e-9)
            {
                _step = step * Math.Max(0.2, 0.9 / Math.Sqrt(error));
                continue;
            }

            if (++Steps > MostSteps)
            {
                throw new InvalidOperationException(
                    Invariant.Text($"The stop did not finish within {MostSteps} steps; it had reached {time} s."));
            }

            system.Events(time + step, _next, _after);
            int fired = FirstFired(ref system, time, ref step, state);
            time = time + step >= end - 1e-12 ? end : time + step;
            _next.CopyTo(state);
            system.Accepted(time, state);
            _step = Math.Max(step, 1e-9) * Math.Min(3, 0.9 / Math.Sqrt(Math.Max(error, 1e-4)));
            if (fired >= 0)
            {
                _step = Math.Min(_step, 1e-3);
                return fired;
            }

            _after.CopyTo(_before);
        }

        return -1;
    }

    private int FirstFired<T>(ref T system, double time, ref double step, ReadOnlySpan<double> state) where T : struct, IStiffSystem
    {
        int fired = -1;
        for (int i = 0; i < _after.Length; i++)
        {
            if (_before[i] > 0 && _after[i] <= 0)
            {
                // Repeats the step with the length that brings the event function to zero (false position, Illinois form).
                double low = 0;
                double high = step;
                double atLow = _before[i];
                double atHigh = _after[i];
                for (int k = 0; k < 60 && high - low > 1e-10 && atHigh < 0; k++)
                {
                    double middle = low + (high - low) * Math.Clamp(atLow / (atLow - atHigh), 0.01, 0.99);
                    Step(ref system, time, middle, state, _trial);
                    system.Events(time + middle, _trial, _after);
                    if (_after[i] > 0)
                    {
                        low = middle;
                        atLow = _after[i];
                        atHigh *= 0.5;
                    }
                    else
                    {
                        high = middle;
                        atHigh = _after[i];
                        atLow *= 0.5;
                    }
                }

                step = high;
                Step(ref system, time, step, state, _next);
                system.Events(time + step, _next, _after);
                fired = i;
            }
        }

        return fired;
    }

    /// <summary>One step without control; for the fixed-step convergence test too.</summary>
    internal double Step<T>(ref T system, double time, double step, ReadOnlySpan<double> state, Span<double> result) where T
        : struct, IStiffSystem
    {
        int controlled = system.Controlled;
        system.Rates(time, state, _k1, _decay);
        for (int i = 0; i < state.Length; i++)
        {
            double damping = 1 / (1 + Gamma * step * _decay[i]);
            _decay[i] = damping;
            _k1[i] *= damping;
            _stage[i] = state[i] + step * _k1[i];
        }

        // The second stage's own decay rates are not used: any approximation keeps the order.
        system.Rates(time + step, _stage, _k2, result);
        double worst = 0;
        for (int i = 0; i < state.Length; i++)
        {
            double k2 = (_k2[i] - 2 * _k1[i]) * _decay[i];
            result[i] = state[i] + step * (1.5 * _k1[i] + 0.5 * k2);
            if (i < controlled)
            {
                worst = Math.Max(worst, Math.Abs(0.5 * step * (_k1[i] + k2)) / (_relative * (1 + Math.Abs(state[i]))));
            }
        }

        return double.IsFinite(worst) ? worst : 1e6;
    }
}
