using System.Diagnostics;
using System.Runtime.CompilerServices;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>Work that may take seconds, with a line under the cell that says how far it is.</summary>
/// <remarks>
/// The line appears after half a second and is written anew twice a second; when the work is done it says so. The program that writes reports prints it beside the cell's number
/// and leaves it out of the report. Outside a notebook the work is just done.
/// </remarks>
/// <example>
/// <code>
/// UncertainInput flow = UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104)));
/// UncertainSystem unsure = UncertainSystem.Of(system, point, flow);
/// MonteCarloResult sampled = LongWork.Run("Sampling", progress =&gt; unsure.MonteCarlo(Sampling.Of(1_000, seed: 6), progress));
/// </code>
/// </example>
public static class LongWork
{
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(500);

    /// <summary>Does work that says which share of it is done.</summary>
    /// <typeparam name="T">What comes out.</typeparam>
    /// <param name="name">What is done, in a few words; not empty.</param>
    /// <param name="work">The work, which is given what to report to: from any thread, and as often as it likes.</param>
    /// <returns>What comes out.</returns>
    /// <exception cref="ArgumentNullException">There is no name or no work.</exception>
    /// <exception cref="ArgumentException">The name is empty, too long, or cannot be written as XML.</exception>
    public static T Run<T>(string name, Func<IProgress<Ratio>, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        Require.Text(name, nameof(name));
        return Units.HasKernels ? InNotebook(name, work) : work(new Unseen());
    }

    /// <summary>Does work that does not say how far it is: the line says for how long it has been running.</summary>
    /// <typeparam name="T">What comes out.</typeparam>
    /// <param name="name">What is done, in a few words; not empty.</param>
    /// <param name="work">The work.</param>
    /// <returns>What comes out.</returns>
    /// <exception cref="ArgumentNullException">There is no name or no work.</exception>
    /// <exception cref="ArgumentException">The name is empty, too long, or cannot be written as XML.</exception>
    public static T Run<T>(string name, Func<T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Run(name, _ => work());
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static T InNotebook<T>(string name, Func<IProgress<Ratio>, T> work)
    {
        if (KernelInvocationContext.Current is not { } cell)
        {
            return work(new Unseen());
        }

        using var shown = new Line(name, cell);
        T result = work(shown);
        shown.Finish();
        return result;
    }

    private sealed class Unseen : IProgress<Ratio>
    {
        public void Report(Ratio value)
        {
        }
    }

    /// <summary>Reports only leave their share behind, so that a million of them cost next to nothing; a timer writes the line.</summary>
    private sealed class Line : IProgress<Ratio>, IDisposable
    {
        private const int Whole = 1_000_000;

        private readonly string _name;
        private readonly KernelInvocationContext _cell;
        private readonly long _begun = Stopwatch.GetTimestamp();
        private readonly object _gate = new();
        private readonly Timer _timer;
        private DisplayedValue? _shown;
        private ProgressState _state;
        private bool _isClosed;
        private int _share = -1;

        public Line(string name, KernelInvocationContext cell)
        {
            (_name, _cell) = (name, cell);
            _timer = new Timer(_ => Write(), null, Interval, Interval);
        }

        public void Report(Ratio value)
        {
            int share = (int)(Whole * Math.Clamp(value.DecimalFractions, 0, 1));
            for (int before = Volatile.Read(ref _share); share > before;)
            {
                int found = Interlocked.CompareExchange(ref _share, share, before);
                if (found == before)
                {
                    return;
                }

                before = found;
            }
        }

        public void Finish() => _state = ProgressState.Finished;

        public void Dispose()
        {
            _timer.Dispose();
            lock (_gate)
            {
                // A timer that has fired may still wait for the gate; what it would write is old.
                _isClosed = true;
                _state = _state == ProgressState.Finished ? _state : ProgressState.Stopped;
                if (_shown is not null)
                {
                    Show();
                }
            }
        }

        private void Write()
        {
            lock (_gate)
            {
                if (!_isClosed)
                {
                    Show();
                }
            }
        }

        private void Show()
        {
            int share = Volatile.Read(ref _share);
            var line = new ProgressLine(_name, share < 0 ? null : share / (double)Whole, Stopwatch.GetElapsedTime(_begun), _state);
            if (_shown is null)
            {
                _shown = _cell.Display(line);
            }
            else
            {
                _shown.Update(line);
            }
        }
    }
}
