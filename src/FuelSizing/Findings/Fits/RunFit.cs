using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Findings;

/// <summary>The likeliest state of a run's model: least squares over the comparisons, and over what is off against its tolerance.</summary>
/// <remarks>
/// Cost = Σ (difference/σ)² + Σ (off/tolerance)². A quantity that is set free pays no tolerance, or that of its own. Gauss–Newton, the step halved
/// while it does not help; the normal equations are solved by MathNet.Numerics' Cholesky factors.
/// </remarks>
internal sealed class RunFit
{
    /// <summary>A free quantity's tolerance is this many times its usual one, so that data that say nothing leave it be.</summary>
    private const double Freedom = 1000;

    private const int MaximumSteps = 25;

    private readonly Lazy<Matrix<double>> _scattered;

    private RunFit(RunModel model, double[] off, double cost, double[] normal, double[] pull)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> factors = Factors(normal, pull);
        (Model, Off, Cost) = (model, off, cost);
        Covariance = factors.Solve(Matrix<double>.Build.DenseIdentity(off.Length));
        Likeliest = [.. off];
        LogEvidence = (-0.5 * (cost + factors.DeterminantLn - pull.Sum(Math.Log))) + OneSided.Cut(Off, Covariance);
        double lack = cost / Math.Max(1, model.Comparisons);
        _scattered = new(() =>
        {
            if (lack <= 1)
            {
                return Covariance;
            }

            Matrix<double> wider = Factors([.. normal.Select(each => each / lack)], pull).Solve(Matrix<double>.Build.DenseIdentity(off.Length));
            OneSided.Cut([.. Likeliest], wider);
            return wider;
        });
    }

    /// <summary>The model.</summary>
    public RunModel Model { get; }

    /// <summary>What is off, in units of its tolerance: the likeliest, but for what can only be off to one side.</summary>
    public double[] Off { get; }

    /// <summary>What is off where the sum of squares is lowest, in units of its tolerance.</summary>
    public double[] Likeliest { get; }

    /// <summary>Sum of squares.</summary>
    public double Cost { get; }

    /// <summary>
    /// ln of how probable the run is, everything that may be off averaged over, but for a term that is the same of every fit of a run:
    /// −½ (cost + ln |Σ slopes² + 1/prior variance| + ln |prior variance|), Laplace's approximation.
    /// </summary>
    public double LogEvidence { get; }

    /// <summary>Of what is off, in units of the tolerances.</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>How far a quantity is off, SI.</summary>
    public double Value(RunQuantity quantity) => Off[(int)quantity] * Model.Tolerance[(int)quantity];

    /// <summary>Standard error of it, SI. More scatter than stated makes it wider, as it makes evidence weaker.</summary>
    public double Error(RunQuantity quantity) =>
        Math.Sqrt(_scattered.Value[(int)quantity, (int)quantity]) * Model.Tolerance[(int)quantity];

    /// <summary>
    /// The errors of several quantities as moves that are independent of one another, each at its standard deviation, SI: columns of the covariance's
    /// Cholesky factor.
    /// </summary>
    public IEnumerable<double[]> Moves(params RunQuantity[] quantities)
    {
        Matrix<double> factor = Matrix<double>.Build.Dense(
            quantities.Length,
            quantities.Length,
            (row, column) => _scattered.Value[(int)quantities[row], (int)quantities[column]]).Cholesky().Factor;
        return factor.EnumerateColumns().Select(column => column.Select((by, i) => by * Model.Tolerance[(int)quantities[i]]).ToArray());
    }

    /// <summary>Fits from a start.</summary>
    public static RunFit From(RunModel model, double[] start, params RunQuantity[] free) =>
        From(model, start, Array.ConvertAll(free, quantity => new Freed(quantity, 0, Freedom)));

    /// <summary>Fits from a start, some quantities with a prior of their own.</summary>
    public static RunFit From(RunModel model, double[] start, IReadOnlyList<Freed> free)
    {
        double[] pull = new double[RunModel.Quantities];
        double[] mean = new double[RunModel.Quantities];
        Array.Fill(pull, 1);
        foreach (Freed one in free)
        {
            pull[(int)one.Quantity] = 1 / (one.Deviation * one.Deviation);
            mean[(int)one.Quantity] = one.Mean;
        }

        double[] normal = new double[RunModel.Quantities * RunModel.Quantities];
        double[] right = new double[RunModel.Quantities];
        double[] off = (double[])start.Clone();
        double cost = model.Gather(off, normal, right) + Paid(off, pull, mean);
        double[] next = new double[off.Length];
        double[] nextNormal = new double[normal.Length];
        double[] nextRight = new double[right.Length];
        for (int step = 0; step < MaximumSteps; step++)
        {
            Vector<double> move = Factors(normal, pull).Solve(
                Vector<double>.Build.Dense(off.Length, i => right[i] - (pull[i] * (off[i] - mean[i]))));
            double promised = 0;
            for (int i = 0; i < off.Length; i++)
            {
                promised += move[i] * (right[i] - (pull[i] * (off[i] - mean[i])));
            }

            if (promised < Settled)
            {
                break;
            }

            double share = 1;
            double nextCost = double.PositiveInfinity;
            for (int halving = 0; halving < 6; halving++, share /= 2)
            {
                for (int i = 0; i < off.Length; i++)
                {
                    next[i] = off[i] + (share * move[i]);
                }

                nextCost = model.Gather(next, nextNormal, nextRight) + Paid(next, pull, mean);
                if (nextCost < cost)
                {
                    break;
                }
            }

            if (!(nextCost < cost))
            {
                break;
            }

            bool settled = cost - nextCost < Settled;
            (off, next) = (next, off);
            (normal, nextNormal) = (nextNormal, normal);
            (right, nextRight) = (nextRight, right);
            cost = nextCost;
            if (settled)
            {
                break;
            }
        }

        return new(model, off, cost, normal, pull);
    }

    // Far under what tells two faults apart.
    private const double Settled = 0.02;

    private static MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> Factors(double[] normal, double[] pull)
    {
        Matrix<double> matrix = Matrix<double>.Build.Dense(pull.Length, pull.Length, (double[])normal.Clone());
        for (int i = 0; i < pull.Length; i++)
        {
            matrix[i, i] += pull[i];
        }

        return matrix.Cholesky();
    }

    private static double Paid(double[] off, double[] pull, double[] mean)
    {
        double paid = 0;
        for (int i = 0; i < off.Length; i++)
        {
            double away = off[i] - mean[i];
            paid += pull[i] * away * away;
        }

        return paid;
    }
}
