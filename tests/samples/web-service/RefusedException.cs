using FuelSizing.Files;
using FuelSizing.Quantities;

namespace FuelSizing.Samples;

/// <summary>A request that cannot be answered; the answer is a problem (RFC 9457) with the library's words and places.</summary>
internal sealed class RefusedException : Exception
{
    private RefusedException(IResult answer) => Answer = answer;

    public IResult Answer { get; }

    /// <summary>A refusal in words.</summary>
    public static RefusedException Of(int status, string detail) => new(Results.Problem(detail, statusCode: status));

    /// <summary>A value that the library refuses, in its own words: the argument, the value with its unit, the range, and what to do.</summary>
    public static RefusedException Of(ArgumentOutOfRangeException refused) => new(Results.Problem(
        refused.Message,
        statusCode: StatusCodes.Status400BadRequest,
        extensions: new Dictionary<string, object?> { ["argument"] = refused.ParamName }));

    /// <summary>A setup that could not be read: each problem with its line and field.</summary>
    public static RefusedException Of(SetupException refused, TextStyle style) => new(Results.Problem(
        refused.Message,
        statusCode: StatusCodes.Status400BadRequest,
        title: "The setup cannot be read.",
        extensions: new Dictionary<string, object?>
        {
            ["problems"] = refused.Problems.Select(problem => new
            {
                problem.Line,
                problem.Field,
                problem.Reason.Code,
                Message = problem.Reason.In(style),
            }).ToArray(),
        }));

    /// <summary>Values that are possible, and not plausible: nothing is calculated with them until whoever gave them has confirmed them.</summary>
    public static RefusedException Of(IReadOnlyList<InputQuestion> questions, TextStyle style) => new(Results.Problem(
        $"Correct each value, or confirm it: {string.Join(", ", questions.Select(question => $"accept={question.Input}"))}.",
        statusCode: StatusCodes.Status422UnprocessableEntity,
        title: "A value is possible, and not plausible.",
        extensions: new Dictionary<string, object?>
        {
            ["questions"] = questions.Select(question => new { question.Line, question.Input, question.Likely, Message = question.In(style) }).ToArray(),
        }));
}
