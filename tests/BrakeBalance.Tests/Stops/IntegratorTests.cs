using BrakeBalance.Stops;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace BrakeBalance.Tests.Stops;

public class IntegratorTests
{
    /// <summary>
    /// y′ = −λ (y − cos t), a stiff test problem after Prothero and Robinson (form from memory); with λ = 0 the exact Jacobian is
    /// not told.
    /// </summary>
    private readonly struct Relaxation(double rate, double told) : IStiffSystem
    {
        public int Size => 2;

        public int Controlled => 2;

        public int EventCount => 1;

        public void Rates(double time, ReadOnlySpan<double> state, Span<double> rates, Span<double> decay)
        {
            rates[0] = -rate * (state[0] - Math.Cos(time)) - Math.Sin(time);
            rates[1] = state[0];
            decay[0] = told;
            decay[1] = 0;
        }

        public void Events(double time, ReadOnlySpan<double> state, Span<double> values) => values[0] = state[0];

        public void Accepted(double time, ReadOnlySpan<double> state)
        {
        }
    }

    [Theory]
    [InlineData(3, 3)]
    [InlineData(3, 0)]
    [InlineData(3, 10)]
    public void Halving_the_step_quarters_the_error_whatever_decay_rate_it_is_told(double rate, double told)
    {
        double coarse = Error(rate, told, 40);
        double fine = Error(rate, told, 80);
        double finest = Error(rate, told, 160);
        Assert.Equal(2, Math.Log2(coarse / fine), 0.35);
        Assert.Equal(2, Math.Log2(fine / finest), 0.2);

        static double Error(double rate, double told, int steps)
        {
            var system = new Relaxation(rate, told);
            Span<double> buffer = new double[StiffIntegrator.BufferLength(2, 1)];
            var integrator = new StiffIntegrator(buffer, 2, 1, 1e-3, 1);
            Span<double> y = new double[] { 2, 0 };
            Span<double> next = new double[2];
            double h = 2.0 / steps;
            for (int i = 0; i < steps; i++)
            {
                integrator.Step(ref system, i * h, h, y, next);
                next.CopyTo(y);
            }

            return Math.Abs(y[0] - (Math.Cos(2) + Math.Exp(-rate * 2)));
        }
    }

    [Fact]
    public void A_stiff_problem_is_followed_with_steps_far_above_its_time_constant()
    {
        var system = new Relaxation(1e6, 1e6);
        Span<double> buffer = stackalloc double[StiffIntegrator.BufferLength(2, 1)];
        var integrator = new StiffIntegrator(buffer, 2, 1, 1e-4, 0.1);
        Span<double> y = [1, 0];
        double time = 0;
        Assert.Equal(-1, integrator.Advance(ref system, ref time, y, 1));
        Assert.Equal(Math.Cos(1), y[0], 1e-3);

        // An explicit method is unstable with steps above 2 µs, half a million for this second.
        Assert.True(integrator.Steps < 10_000, integrator.Steps.ToString());
    }

    [Fact]
    public void The_event_is_located_and_agrees_with_the_closed_form()
    {
        // y = cos t falls through zero at π/2.
        var system = new Relaxation(5, 5);
        Span<double> buffer = stackalloc double[StiffIntegrator.BufferLength(2, 1)];
        var integrator = new StiffIntegrator(buffer, 2, 1, 1e-6, 0.1);
        Span<double> y = [1, 0];
        double time = 0;
        Assert.Equal(0, integrator.Advance(ref system, ref time, y, 5));
        Assert.Equal(Math.PI / 2, time, 1e-4);
        Assert.Equal(1, y[1], 1e-4);
    }

    [Fact]
    public void A_rolling_stop_agrees_with_the_fixed_step_solver_of_mathnet()
    {
        // Speed and slip of both axles of the coupe at a constant 40 bar from 100 km/h, for one second, by MathNet's fourth-order
        // Runge-Kutta with 20 µs steps on independently written equations.
        const double m = 1700;
        const double radius = 0.32;
        const double inertia = 2;
        double weight = m * Gravity.StandardMetresPerSecondSquared;
        double scale = 0.9 / Burckhardt(Math.Log(1.2801 * 23.99 / 0.52) / 23.99);
        Vector<double>[] reference =
            RungeKutta.FourthOrder(Vector<double>.Build.Dense([100 / 3.6, 100 / 3.6 / radius, 100 / 3.6 / radius]), 0, 1, 50_001, (_, y) =>
        {
            double mf = scale * Burckhardt(1 - y[1] * radius / y[0]);
            double mr = scale * Burckhardt(1 - y[2] * radius / y[0]);
            double hl = 0.55 / 2.9;

            // N₁ = P₁ + (h/E)(μ₁ N₁ + μ₂ N₂) with N₂ = P − N₁.
            double nf = (0.56 * weight + hl * mr * weight) / (1 - hl * (mf - mr));
            double ff = mf * nf;
            double fr = mr * (weight - nf);
            return Vector<double>.Build.Dense([-(ff + fr) / m, (ff * radius - 2000) / inertia, (fr * radius - 560) / inertia]);
        });
        StopResult stop = StraightStop.Run(
            Cars.Coupe(), Cars.Emergency(40), PressureBuildUp.Instant, Cars.Kmh(100), true, relativeTolerance: 1e-6);
        StopSample before = stop.Trace.Last(s => s.TimeSeconds <= 1);
        double at = before.SpeedMetresPerSecond - before.DecelerationMetresPerSecondSquared * (1 - before.TimeSeconds);
        Assert.Equal(reference[^1][0], at, 2e-3);
        Assert.Equal(1 - reference[^1][1] * radius / reference[^1][0], before.Slip.Front, 2e-5);

        static double Burckhardt(double slip) =>
            Math.Sign(slip) * (1.2801 * (1 - Math.Exp(-23.99 * Math.Abs(slip))) - 0.52 * Math.Abs(slip));
    }
}
