using FuelSizing.Findings;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Tests.Findings;

/// <summary>What can only be off to one side, against the moments of the half-normal distribution and against a sum over the cut density.</summary>
public class OneSidedTests
{
    private const int Slope = (int)RunQuantity.RegulatorSlope;
    private const int Base = (int)RunQuantity.RegulatorBase;

    /// <summary>Known by its tolerance alone: mean √(2/π), variance 1 − 2/π (half-normal distribution, handbook); the run is as probable as before.</summary>
    [Fact]
    public void WhatTheRunSaysNothingOf_IsHalfNormal()
    {
        double[] off = new double[RunModel.Quantities];
        Matrix<double> covariance = Matrix<double>.Build.DenseIdentity(RunModel.Quantities);
        covariance[Slope, Base] = covariance[Base, Slope] = 0.6;
        Assert.Equal(0, OneSided.Cut(off, covariance), 1e-12);
        foreach (RunQuantity quantity in new[] { RunQuantity.RegulatorSlope, RunQuantity.ManifoldLag, RunQuantity.RailLag })
        {
            Assert.Equal(Math.Sqrt(2 / Math.PI), off[(int)quantity], 1e-12);
            Assert.Equal(1 - (2 / Math.PI), covariance[(int)quantity, (int)quantity], 1e-12);
        }

        // What goes with it goes by the regression on it: 0.6 of its move, 0.6² of its variance.
        Assert.Equal(0.6 * Math.Sqrt(2 / Math.PI), off[Base], 1e-12);
        Assert.Equal(1 - (0.36 * 2 / Math.PI), covariance[Base, Base], 1e-12);
        Assert.Equal(0.6 * (1 - (2 / Math.PI)), covariance[Base, Slope], 1e-12);
        Assert.Equal((0.0, 1.0), (off[(int)RunQuantity.FuelDensity], covariance[(int)RunQuantity.FuelDensity, (int)RunQuantity.FuelDensity]));
    }

    [Theory]
    [InlineData(-1.3, 0.5)]
    [InlineData(0.4, 0.2)]
    [InlineData(-4, 0.7)]
    [InlineData(9, 0.3)]
    public void Cut_HasTheMomentsOfWhatIsLeft(double mean, double deviation)
    {
        double[] off = new double[RunModel.Quantities];
        off[Slope] = mean;
        Matrix<double> covariance = Matrix<double>.Build.DenseIdentity(RunModel.Quantities);
        covariance[Slope, Slope] = deviation * deviation;
        double log = OneSided.Cut(off, covariance);
        const int Steps = 400_000;
        double step = (Math.Max(0, mean) + (10 * deviation)) / Steps;
        (double all, double first, double second) = (0, 0, 0);
        for (int i = 0; i < Steps; i++)
        {
            double x = (i + 0.5) * step;
            double density = Normal.PDF(mean, deviation, x) * step;
            (all, first, second) = (all + density, first + (x * density), second + (x * x * density));
        }

        Assert.Equal(Math.Log(2 * all), log, 1e-6);
        Assert.Equal(first / all, off[Slope], 1e-6);
        Assert.Equal((second / all) - (first / all * (first / all)), covariance[Slope, Slope], 1e-6);
    }

    /// <summary>A regulator that seems to rise by fifty standard deviations is as good as ruled out, and no number is lost.</summary>
    [Fact]
    public void FarOnTheWrongSide_IsStillANumber()
    {
        double[] off = new double[RunModel.Quantities];
        off[Slope] = -50;
        Matrix<double> covariance = Matrix<double>.Build.DenseIdentity(RunModel.Quantities);
        Assert.InRange(OneSided.Cut(off, covariance), -1e4, -400);
        Assert.All(off, one => Assert.True(double.IsFinite(one)));
        Assert.InRange(covariance[Slope, Slope], 0, 0.01);
    }

    /// <summary>Moves are a square root of the covariance: their products add up to it.</summary>
    [Fact]
    public void Moves_AddUpToTheErrors()
    {
        RunModel model = PulledWren.DefaultCheck.Model(PulledWren.With(RunFault.None, 3).Recorded(2));
        RunFit fit = RunFit.From(model, new double[RunModel.Quantities]);
        RunQuantity[] quantities = [RunQuantity.RegulatorSlope, RunQuantity.RegulatorBase, RunQuantity.RailLag];
        double[][] moves = [.. fit.Moves(quantities)];
        double scattered = Math.Max(1, fit.Cost / model.Comparisons);
        for (int i = 0; i < quantities.Length; i++)
        {
            Assert.Equal(fit.Error(quantities[i]), Math.Sqrt(moves.Sum(move => move[i] * move[i])), 1e-9 * model.Tolerance[(int)quantities[i]]);
            for (int j = 0; j < i && scattered == 1; j++)
            {
                double together = fit.Covariance[(int)quantities[i], (int)quantities[j]] * model.Tolerance[(int)quantities[i]] * model.Tolerance[(int)quantities[j]];
                Assert.Equal(together, moves.Sum(move => move[i] * move[j]), 1e-9 * model.Tolerance[(int)quantities[i]] * model.Tolerance[(int)quantities[j]]);
            }
        }

        Assert.Equal(1, scattered);
    }
}
