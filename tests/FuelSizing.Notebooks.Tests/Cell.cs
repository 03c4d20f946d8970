using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Runs code as a notebook's cell does: within a kernel's command, each time in a kernel of its own.</summary>
internal static class Cell
{
    public static async Task RunAsync(Action body)
    {
        Exception? thrown = null;
        using CompositeKernel notebook = new()
        {
            new Running(() => thrown = Record.Exception(body)),
        };
        await notebook.SendAsync(new SubmitCode("body", "cell"));
        if (thrown is not null)
        {
            throw new AggregateException(thrown);
        }
    }

    private sealed class Running(Action body) : Kernel("cell"), IKernelCommandHandler<SubmitCode>
    {
        public Task HandleAsync(SubmitCode command, KernelInvocationContext context)
        {
            body();
            return Task.CompletedTask;
        }
    }
}
