using System.Diagnostics;
using System.Globalization;

namespace FuelSizing.Benchmarks;

/// <summary>The program in Python, kept running so that its turns alternate with the others'.</summary>
internal sealed class NumPyPeer : IDisposable
{
    private readonly Process _python;

    public NumPyPeer(string inputs, string outputs)
    {
        string script = Path.GetFullPath("benchmarks/peer/points.py");
        _python = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script, inputs, outputs])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        Version = _python.StandardOutput.ReadLine() ?? throw new InvalidOperationException("python3-numpy does not run.");
    }

    public string Version { get; }

    /// <summary>Seconds that so many runs take.</summary>
    public double Run(int repeats)
    {
        _python.StandardInput.WriteLine(repeats.ToString(CultureInfo.InvariantCulture));
        _python.StandardInput.Flush();
        return double.Parse(_python.StandardOutput.ReadLine()!, CultureInfo.InvariantCulture);
    }

    public void Dispose()
    {
        _python.StandardInput.Close();
        _python.WaitForExit();
        _python.Dispose();
    }
}
