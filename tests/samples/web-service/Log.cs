namespace FuelSizing.Samples;

/// <summary>What the service says of itself.</summary>
internal static partial class Log
{
    [LoggerMessage(Level = LogLevel.Information, Message = "The caller hung up; the work was stopped.")]
    public static partial void Stopped(ILogger logger);
}
