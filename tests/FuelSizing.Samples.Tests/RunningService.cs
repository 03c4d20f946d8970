using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;

namespace FuelSizing.Samples.Tests;

/// <summary>The web service, really started, on a free port of this machine alone.</summary>
public sealed partial class RunningService : IAsyncLifetime, IDisposable
{
    private readonly Process _process = new();
    private readonly ConcurrentQueue<string> _log = [];

    public HttpClient Client { get; } = new() { Timeout = TimeSpan.FromSeconds(60) };

    /// <summary>Everything that the service has said.</summary>
    public IReadOnlyCollection<string> Log => _log;

    public async Task InitializeAsync()
    {
        TaskCompletionSource<Uri> address = new(TaskCreationOptions.RunContinuationsAsynchronously);
        _process.StartInfo = Sample.Start("web-service", "WebService", "--urls", "http://127.0.0.1:0");
        _process.OutputDataReceived += (_, line) => Hear(line.Data);
        _process.ErrorDataReceived += (_, line) => Hear(line.Data);
        _process.EnableRaisingEvents = true;
        _process.Exited += (_, _) => address.TrySetException(new InvalidOperationException($"The service ended: {string.Join('\n', _log)}"));
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        Client.BaseAddress = await address.Task.WaitAsync(TimeSpan.FromSeconds(60));

        void Hear(string? line)
        {
            _log.Enqueue(line ?? string.Empty);
            if (Listening().Match(line ?? string.Empty) is { Success: true } match)
            {
                address.TrySetResult(new(match.Value));
            }
        }
    }

    // The runner calls both.
    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose()
    {
        Client.Dispose();
        _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }

    /// <summary>Posts a setup.</summary>
    public Task<HttpResponseMessage> Check(string query, byte[] setup, CancellationToken cancellation = default)
    {
        ByteArrayContent body = new(setup);
        body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return Client.PostAsync($"/check?{query}", body, cancellation);
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:[0-9]+")]
    private static partial Regex Listening();
}
