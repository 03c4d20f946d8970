using FuelSizing.Samples;
using FuelSizing.Systems;

// A service that answers one question: a setup is posted, and its verdict comes back in the units that were asked for, with the result as data.
WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(args);
builder.WebHost.ConfigureKestrel(server => server.Limits.MaxRequestBodySize = CheckRequest.LargestSetup);
builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Warning);
builder.Services.AddProblemDetails();
WebApplication app = builder.Build();
app.UseExceptionHandler();
app.UseStatusCodePages();

app.MapPost("/check", async (HttpRequest request, CancellationToken aborted) =>
{
    try
    {
        CheckRequest asked = await CheckRequest.Of(request, aborted);
        if (asked.Point is { } point)
        {
            return Answer.Of(asked.Setup.System.Solve(point), asked.Style);
        }

        // The token is the caller's: who hangs up stops the work, and nobody reads what was done until then.
        SweepResult sweep = asked.Setup.System.Sweep(asked.Speeds, asked.Boosts, asked.Conditions, cancellation: aborted);
        aborted.ThrowIfCancellationRequested();
        return Answer.Of(sweep, asked.Style);
    }
    catch (RefusedException refused)
    {
        return refused.Answer;
    }
    catch (ArgumentOutOfRangeException refused)
    {
        return RefusedException.Of(refused).Answer;
    }
    catch (OperationCanceledException) when (aborted.IsCancellationRequested)
    {
        Log.Stopped(app.Logger);
        return Results.StatusCode(StatusCodes.Status499ClientClosedRequest);
    }
});

app.Run();
