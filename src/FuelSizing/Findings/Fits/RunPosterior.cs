using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Findings;

/// <summary>What a run leaves of each quantity: the likeliest state and its covariance, in units of the tolerances.</summary>
/// <param name="Off">The likeliest.</param>
/// <param name="Covariance">Of all of them.</param>
internal sealed record RunPosterior(double[] Off, Matrix<double> Covariance)
{
    /// <summary>
    /// The same with what the plan's equations do not know put into the parts' own figures, as it is at one place of the engine: air over boost and
    /// speed into volumetric efficiency, the regulator's slope into its base, the fuel's density into the injectors' flow. What a run has measured
    /// there together is then known together, though it leaves open which of them it is.
    /// </summary>
    public RunPosterior At(RunCheck check, RunModel model, in EnginePlace place)
    {
        Matrix<double> into = Matrix<double>.Build.DenseIdentity(RunModel.Quantities);
        Span<double> hats = stackalloc double[RunModel.Quantities];
        hats.Clear();
        check.AirOverSpeed.Share(place.Speed, hats, 1);
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            Put(RunQuantity.VolumetricEfficiency, (RunQuantity)quantity, hats[quantity]);
        }

        double boost = Math.Max(0, place.Boost);
        Put(RunQuantity.VolumetricEfficiency, RunQuantity.AirByBoost, boost);
        Put(RunQuantity.VolumetricEfficiency, RunQuantity.ChargeTemperature, boost * place.AirByTemperature);
        Put(RunQuantity.RegulatorBase, RunQuantity.RegulatorSlope, -place.InjectedShare);
        Put(RunQuantity.InjectorFlow, RunQuantity.FuelDensity, 0.5);
        return new([.. into * Vector<double>.Build.DenseOfArray(Off)], into * Covariance * into.Transpose());

        void Put(RunQuantity part, RunQuantity unknown, double weight)
        {
            if (weight != 0)
            {
                into[(int)part, (int)unknown] = weight * model.Tolerance[(int)unknown] / model.Tolerance[(int)part];
            }
        }
    }
}
