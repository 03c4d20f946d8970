using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace FuelSizing.Bench;

/// <summary>Readings fitted by a sum of known functions with unknown factors, each reading by its own weight: the least sum of squares.</summary>
/// <remarks>
/// By the QR factors of the readings divided by their deviations, columns scaled to one length. The normal equations would square the condition and lose twice the digits.
/// How far readings lie from the fit sets the scale of its deviations: the stated deviations only say which reading is more accurate than which.
/// </remarks>
internal sealed class LinearFit
{
    // A reading that alone decides a factor has a leverage of one but for these.
    private const double LastBits = 1e-9;
    private const double ManyDegrees = 1e6;

    private readonly Matrix<double> _covariance;

    private LinearFit(double[] factors, Matrix<double> covariance, double[] residuals, double[] leverages, int unknowns)
    {
        (Factors, _covariance, Residuals, Leverages) = (factors, covariance, residuals, leverages);
        DegreesOfFreedom = residuals.Length - unknowns;
        Scale = DegreesOfFreedom > 0 ? Math.Sqrt(residuals.Sum(residual => residual * residual) / DegreesOfFreedom) : double.NaN;
    }

    /// <summary>The unknown factors, in the order of the functions.</summary>
    public IReadOnlyList<double> Factors { get; }

    /// <summary>What each reading is over the fit, in its stated deviations.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>How much a reading draws the fit towards itself, 0 to 1.</summary>
    public IReadOnlyList<double> Leverages { get; }

    /// <summary>Readings less unknowns.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>How far readings are from the fit, in stated deviations: with weights of one the residual standard deviation itself; not a number without a reading to spare.</summary>
    public double Scale { get; }

    /// <summary>Fits.</summary>
    /// <param name="rows">For each reading the value of each function.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="deviations">Standard deviation of each, at least in proportion.</param>
    public static LinearFit Of(IReadOnlyList<double[]> rows, IReadOnlyList<double> readings, IReadOnlyList<double> deviations)
    {
        int unknowns = rows[0].Length;
        Matrix<double> weighted = Matrix<double>.Build.Dense(rows.Count, unknowns, (reading, function) => rows[reading][function] / deviations[reading]);
        Vector<double> values = Vector<double>.Build.Dense(rows.Count, reading => readings[reading] / deviations[reading]);
        double[] lengths = [.. weighted.EnumerateColumns().Select(column => column.L2Norm())];
        QR<double> factored = weighted.MapIndexed((_, function, value) => value / lengths[function]).QR(QRMethod.Thin);
        Vector<double> solved = factored.R.Solve(factored.Q.TransposeThisAndMultiply(values));
        Matrix<double> inverse = factored.R.Inverse();
        Matrix<double> covariance = inverse.TransposeAndMultiply(inverse).MapIndexed((one, other, value) => value / (lengths[one] * lengths[other]));
        double[] factors = [.. solved.Select((factor, function) => factor / lengths[function])];
        return new(
            factors,
            covariance,
            [.. (values - (weighted * Vector<double>.Build.Dense(factors)))],
            [.. factored.Q.EnumerateRows().Select(row => row.DotProduct(row))],
            unknowns);
    }

    /// <summary>Covariance of two factors, by the scatter of the readings.</summary>
    public double Covariance(int one, int other) => Scale * Scale * _covariance[one, other];

    /// <summary>Standard deviation of a factor.</summary>
    public double Deviation(int factor) => Math.Sqrt(Covariance(factor, factor));

    /// <summary>Student's t at which a share of all fits as this one lie within.</summary>
    /// <param name="confidence">For instance 0.95.</param>
    public double Student(double confidence) => StudentT.InvCDF(0, 1, DegreesOfFreedom, (1 + confidence) / 2);

    /// <summary>What is fitted at a place, and the standard deviation of the fit there, without that of a reading.</summary>
    /// <param name="functions">Value of each function.</param>
    public (double Value, double Deviation) At(IReadOnlyList<double> functions)
    {
        Vector<double> row = Vector<double>.Build.DenseOfEnumerable(functions);
        return (row.DotProduct(Vector<double>.Build.DenseOfEnumerable(Factors)), Scale * Math.Sqrt(row * _covariance * row));
    }

    /// <summary>
    /// Places of readings further off than chance brings one of so many: each compared with a fit without it (the externally studentized residual), at 1 % for
    /// all readings together (Bonferroni).
    /// </summary>
    public IEnumerable<int> Outliers()
    {
        if (DegreesOfFreedom < 2)
        {
            yield break;
        }

        double bound = StudentT.InvCDF(0, 1, DegreesOfFreedom - 1, 1 - (0.005 / Residuals.Count));
        double squares = Scale * Scale * DegreesOfFreedom;
        for (int reading = 0; reading < Residuals.Count; reading++)
        {
            double own = Residuals[reading] * Residuals[reading] / (1 - Leverages[reading]);
            double without = (squares - own) / (DegreesOfFreedom - 1);
            if (own > bound * bound * Math.Max(without, 0))
            {
                yield return reading;
            }
        }
    }

    /// <summary>Those of them that are further off than the stated deviations explain too: where readings agree better than their instruments, none is one.</summary>
    public IEnumerable<int> OutliersBeyondStated()
    {
        double bound = Normal.InvCDF(0, 1, 1 - (0.005 / Residuals.Count));
        return Outliers().Where(reading => Math.Abs(Residuals[reading]) > bound * Math.Sqrt(Math.Max(1 - Leverages[reading], LastBits)));
    }

    /// <summary>Standard deviation of a factor, were the stated deviations right.</summary>
    public double StatedDeviation(int factor) => Math.Sqrt(_covariance[factor, factor]);

    /// <summary>
    /// How many stated deviations an interval reaches to either side: Student's t by the scatter, and never less than the stated deviations themselves give. Readings that all agree, as those
    /// of a coarse scale do, do not make it more accurate than it is.
    /// </summary>
    /// <param name="confidence">For instance 0.95.</param>
    public double Reach(double confidence) => Math.Max(Student(confidence) * Scale, Normal.InvCDF(0, 1, (1 + confidence) / 2));

    /// <summary>
    /// Half of an interval of a figure whose error has two parts: one by the readings, of so many stated deviations, and one that all readings share, whose standard deviation is stated. The degrees of freedom of both
    /// together are those of Welch and Satterthwaite (GUM, JCGM 100:2008, G.4); never less than the stated deviations themselves give.
    /// </summary>
    /// <param name="stated">Standard deviation of the figure, were the stated deviations of readings right.</param>
    /// <param name="shared">Standard deviation of what all readings have in common.</param>
    /// <param name="confidence">For instance 0.95.</param>
    public double Half(double stated, double shared, double confidence)
    {
        double probability = (1 + confidence) / 2;
        double own = Scale * stated;
        double both = Math.Sqrt((own * own) + (shared * shared));
        double freedom = DegreesOfFreedom * Math.Pow(both / own, 4);

        // A few million degrees of freedom are a normal, and readings without any scatter have no end of them.
        double student = freedom < ManyDegrees ? StudentT.InvCDF(0, 1, freedom, probability) : Normal.InvCDF(0, 1, probability);
        return Math.Max(student * both, Normal.InvCDF(0, 1, probability) * Math.Sqrt((stated * stated) + (shared * shared)));
    }

    /// <summary>
    /// Chance of readings as far from the fit as these if it has the right form: what repeats of one place differ by among each other against what their means differ from the fit. Not
    /// a number without repeats, or without more places than unknowns.
    /// </summary>
    /// <param name="places">For each reading its place: equal where it is a repeat.</param>
    public double LackOfFit(IReadOnlyList<double> places)
    {
        var groups = Residuals.Select((residual, reading) => (residual, place: places[reading])).GroupBy(pair => pair.place, pair => pair.residual).ToArray();
        int unknowns = Residuals.Count - DegreesOfFreedom;
        (int between, int within) = (groups.Length - unknowns, Residuals.Count - groups.Length);
        double pure = groups.Sum(group => group.Sum(residual => Math.Pow(residual - group.Average(), 2)));
        double lack = groups.Sum(group => group.Count() * Math.Pow(group.Average(), 2));
        return between > 0 && within > 0 && pure > 0 ? 1 - FisherSnedecor.CDF(between, within, lack / between / (pure / within)) : double.NaN;
    }
}
