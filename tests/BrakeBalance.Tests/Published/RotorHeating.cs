using BrakeBalance.Stops;
using MathNet.Numerics.Integration;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Rotor heating against printed and closed-form numbers; each case names its own source.</summary>
[Source("Course notes and physics texts on brake heat", Reading.Read)]
public class RotorHeating
{
    /// <summary>
    /// Course note (scribd 12801615, seen): 3000 lb from 60 mph are 361,306 ft·lbf, 469.7 BTU, and heat four rotors of 10 lb with 0.130
    /// BTU/(lb °F)
    /// by 90.3 °F. The note rounds its conversion factors, so the tolerance is 1.5 %.
    /// </summary>
    [Fact]
    public void Four_rotors_of_ten_pounds_rise_by_90_fahrenheit_in_a_stop_from_60_mph()
    {
        // The whole stop at a tenth of lock and without cooling, hat or pads: everything goes into the four rings.
        ThermalBrake ring = Ring(Mass.FromPounds(10), SpecificEntropy.FromJoulesPerKilogramKelvin(0.130 * 4186.8));
        HeatResult result = BrakeHeat.Run(
            Car(Mass.FromPounds(3000)), new(ring, ring),
            HeatCycle.Repeated(1, Speed.FromMilesPerHour(60), Speed.Zero, Acceleration.FromStandardGravity(0.3), Duration.FromSeconds(60),
                false),
            Temperature.FromDegreesCelsius(20), BrakeBalance.Hydraulics.BrakeFluidGrade.Dot4);
        HeatStop stop = Assert.Single(result.Stops);
        double mean = 0.5 * (stop.RingAtEnd.Front.DegreesFahrenheit + stop.RingAtEnd.Rear.DegreesFahrenheit) - 68;
        Assert.Equal(90.3, mean, 0.015 * 90.3);
        Assert.Equal(469.7, (stop.Heat.Front + stop.Heat.Rear).BritishThermalUnits, 0.015 * 469.7);
    }

    /// <summary>
    /// A page on braking physics (the-contact-patch.com, c0816, seen, rounded): 1.5 t at 120 km/h is just over 800 kJ; at 0.5 g just
    /// under 7 s; about 120 kW.
    /// </summary>
    [Fact]
    public void A_tonne_and_a_half_from_120_km_h_at_half_g()
    {
        ThermalBrake ring = Ring(Mass.FromKilograms(8), SpecificEntropy.FromJoulesPerKilogramKelvin(460));
        HeatResult result = BrakeHeat.Run(
            Car(Mass.FromTonnes(1.5)), new(ring, ring),
            HeatCycle.Repeated(1, Speed.FromKilometersPerHour(120), Speed.Zero, Acceleration.FromStandardGravity(0.5),
                Duration.FromSeconds(60), false),
            Temperature.FromDegreesCelsius(20), BrakeBalance.Hydraulics.BrakeFluidGrade.Dot4);
        HeatStop stop = Assert.Single(result.Stops);
        double kilojoules = (stop.Heat.Front + stop.Heat.Rear).Kilojoules;
        double seconds = 120 / 3.6 / stop.MeanDeceleration.MetersPerSecondSquared;
        Assert.InRange(kilojoules, 800, 850);
        Assert.InRange(seconds, 6.5, 7);
        Assert.InRange(kilojoules / seconds, 115, 125);
        Assert.Equal(833.3, kilojoules, 833.3 * 0.005);
    }

    /// <summary>
    /// Kinetic energy into brake material, printed answers: OpenStax College Physics, example 14.2 (a truck's 7.35 MJ into 100 kg with
    /// 800 J/(kg K), 92 °C, read);
    /// 750 kg at 24 m/s into 15 kg of iron with 450 J/(kg K), 216 kJ, 32 K (solve.club, read); 1500 kg at 60 km/h into 15 kg with 460
    /// J/(kg K),
    /// 30 K (gauthmath, read, rounded). The energies come here from a stop of a car with that kinetic energy.
    /// </summary>
    [Theory]
    [InlineData(10_000, 38.3406, 100, 800, 92, 0.5)]
    [InlineData(750, 24, 15, 450, 32, 0.5)]
    [InlineData(1500, 16.6667, 15, 460, 30, 0.5)]
    public void Kinetic_energy_warms_brake_material(double mass, double metresPerSecond, double material, double specificHeat, double rise,
        double tolerance)
    {
        ThermalBrake ring = Ring(Mass.FromKilograms(material / 4), SpecificEntropy.FromJoulesPerKilogramKelvin(specificHeat));
        HeatStop stop = Assert.Single(BrakeHeat.Run(
            Car(Mass.FromKilograms(mass)), new(ring, ring),
            HeatCycle.Repeated(1, Speed.FromMetersPerSecond(metresPerSecond), Speed.Zero, Acceleration.FromMetersPerSecondSquared(2),
                Duration.FromSeconds(90), false),
            Temperature.FromDegreesCelsius(0), BrakeBalance.Hydraulics.BrakeFluidGrade.Dot4).Stops);
        Assert.Equal(rise, 0.5 * (stop.RingAtEnd.Front.DegreesCelsius + stop.RingAtEnd.Rear.DegreesCelsius), tolerance);
    }

    /// <summary>
    /// The size of a disc by energy: a school textbook of physics (Holt Physics, 2009), chapter 9, problem 32, read with its solution:
    /// 1500 kg at 32 m/s are 768 kJ, 192 kJ a disc, into four discs of 3.5 kg with 448 J/(kg K). The solution prints 123.40 K, a slip: its
    /// own 192 000 / (3.5 · 448) are 122.45 K, which is what is asked here; the printed number holds to 1 %.
    /// </summary>
    [Fact]
    public void Four_discs_of_three_and_a_half_kilograms_rise_by_122_kelvins()
    {
        ThermalBrake ring = Ring(Mass.FromKilograms(3.5), SpecificEntropy.FromJoulesPerKilogramKelvin(448));
        HeatStop stop = Assert.Single(BrakeHeat.Run(
            Car(Mass.FromKilograms(1500)), new(ring, ring),
            HeatCycle.Repeated(1, Speed.FromMetersPerSecond(32), Speed.Zero, Acceleration.FromMetersPerSecondSquared(8),
                Duration.FromSeconds(90), false),
            Temperature.FromDegreesCelsius(0), BrakeBalance.Hydraulics.BrakeFluidGrade.Dot4).Stops);
        Assert.Equal(768_000, (stop.Heat.Front + stop.Heat.Rear).Joules, 500.0);
        double rise = 0.5 * (stop.RingAtEnd.Front.DegreesCelsius + stop.RingAtEnd.Rear.DegreesCelsius);
        Assert.Equal(122.45, rise, 0.005);
        Assert.Equal(123.40, rise, 0.01 * 123.40);
    }

    /// <summary>
    /// Half-space under a flux that falls linearly: the closed form against Duhamel's integral of the half-space's response to a unit
    /// flux pulse
    /// (Carslaw and Jaeger, from memory), computed by MathNet; and the peak factor 0.5319 of q₀ √t_s/√(k ρ c), for which Limpert
    /// prints √(5/18) = 0.5270 (from memory), 0.9 % lower.
    /// </summary>
    [Source("Carslaw and Jaeger; Limpert", Reading.FromMemory)]
    [Fact]
    public void Surface_rise_is_duhamels_integral_and_peaks_half_way()
    {
        const double k = 48;
        const double rho = 7200;
        const double c = 460;
        const double q0 = 2e6;
        const double end = 4;
        double effusivity = Math.Sqrt(k * rho * c);
        foreach (double t in new[] { 0.5, 1, 2, 3, 4 })
        {
            // u = √(t − τ) takes the singularity out of ∫ q(τ)/√(π (t − τ)) dτ / e.
            double integral = GaussLegendreRule.Integrate(
                u => 2 * q0 * (1 - (t - u * u) / end) / (Math.Sqrt(Math.PI) * effusivity), 0, Math.Sqrt(t), 32);
            Assert.Equal(integral, Rise(t), 1e-6 * integral);
        }

        double peak = SurfaceHeating.Peak(
            HeatFlux.FromWattsPerSquareMeter(q0), ThermalConductivity.FromWattsPerMeterKelvin(k), Density.FromKilogramsPerCubicMeter(rho),
            SpecificEntropy.FromJoulesPerKilogramKelvin(c), Duration.FromSeconds(end)).Kelvins;
        double factor = peak / (q0 * Math.Sqrt(end) / effusivity);
        Assert.Equal(0.5319, factor, 0.00005);
        Assert.Equal(0.5270, factor, 0.01 * 0.5270);
        Assert.True(peak > Rise(1.9) && peak > Rise(2.1));

        double Rise(double t) => SurfaceHeating.Rise(
            HeatFlux.FromWattsPerSquareMeter(q0), ThermalConductivity.FromWattsPerMeterKelvin(k), Density.FromKilogramsPerCubicMeter(rho),
            SpecificEntropy.FromJoulesPerKilogramKelvin(c), Duration.FromSeconds(t), Duration.FromSeconds(end)).Kelvins;
    }

    /// <summary>
    /// Newcomb/Limpert form of repeated stops (form from memory; numbers recomputed): 60 K a stop, B = 0.01/s, every 60 s.
    /// </summary>
    [Source("Newcomb and Spurr; Limpert", Reading.FromMemory)]
    [Theory]
    [InlineData(5, 126.4)]
    [InlineData(null, 133.0)]
    public void Repeated_stops_reach_a_plateau(int? stops, double kelvins) =>
        Assert.Equal(kelvins, RepeatedHeating.PeakRise(TemperatureDelta.FromKelvins(60), 0.01, Duration.FromSeconds(60), stops).Kelvins,
            0.05);

    /// <summary>
    /// The simulated cycle against the closed form above, with a ring that has that cooling rate and no radiation; the stops take 2.8 s
    /// of 60 s.
    /// </summary>
    [Source("Newcomb and Spurr; Limpert", Reading.FromMemory)]
    [Fact]
    public void The_simulated_cycle_follows_the_closed_form()
    {
        // 1000 kg from 28 m/s at 10 m/s²: 392 kJ over four rings.
        double capacity = 0.25 * 0.5 * 1000 * 28 * 28 / 60;
        ThermalBrake ring = Ring(Mass.FromKilograms(capacity / 460), SpecificEntropy.FromJoulesPerKilogramKelvin(460)) with
        {
            StillConvection = HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(0.01 * capacity / 0.1),
        };
        HeatResult result = BrakeHeat.Run(
            Car(Mass.FromKilograms(1000)), new(ring, ring),
            HeatCycle.Repeated(
                5, Speed.FromMetersPerSecond(28), Speed.Zero, Acceleration.FromMetersPerSecondSquared(10), Duration.FromSeconds(60), false,
                Acceleration.FromMetersPerSecondSquared(5)),
            Temperature.FromDegreesCelsius(0), BrakeBalance.Hydraulics.BrakeFluidGrade.Dot4);
        double mean = 0.5 * (result.Stops[4].RingAtEnd.Front.DegreesCelsius + result.Stops[4].RingAtEnd.Rear.DegreesCelsius);
        Assert.Equal(126.4, mean, 2.5);
    }

    private static ThermalBrake Ring(Mass mass, SpecificEntropy specificHeat) => new()
    {
        RingMass = mass,
        SpecificHeat = specificHeat,
        CoolingArea = Area.FromSquareMeters(0.1),
        StillConvection = HeatTransferCoefficient.Zero,
        ConvectionAtTenMetresPerSecond = HeatTransferCoefficient.Zero,
        Emissivity = 0,
        RingShare = 1,
        CaliperConductanceWattsPerKelvin = 0,
    };

    private static BrakedCar Car(Mass mass)
    {
        BrakedAxle axle = new()
        {
            LoadedRadius = Length.FromMeters(0.3),
            Tyre = BrakeBalance.Tyres.PublishedSlipCurves.DryAsphalt,
            Brakes = TorqueCurve.Proportional(Pressure.FromBars(100), Torque.FromNewtonMeters(4000)),
            WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(1e-6),
        };
        return new()
        {
            Name = "ideal",
            Mass = mass,
            Wheelbase = Length.FromMeters(2.5),
            CentreOfGravityHeight = Length.FromMeters(0.5),
            StaticFrontShare = 0.5,
            Axles = new(axle, axle),
        };
    }
}
