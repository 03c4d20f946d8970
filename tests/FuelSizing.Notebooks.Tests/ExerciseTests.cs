namespace FuelSizing.Notebooks.Tests;

/// <summary>The exercises of the notebooks: their answers are what comes out.</summary>
public class ExerciseTests
{
    private const string Border = "\u241E";

    public static TheoryData<string> Notebooks => WorkedExampleTests.Notebooks;

    /// <summary>The notebook with the change, by the cells that the figure needs; all exercises of a notebook are compiled at once.</summary>
    [Theory]
    [MemberData(nameof(Notebooks))]
    public async Task Answers_AreWhatComesOutWithTheChange(string notebook)
    {
        IReadOnlyList<NotebookExercise> exercises = NotebookExercise.Of(notebook);
        Assert.InRange(exercises.Count, 2, 3);

        using CellRunner runner = new();
        CellRun run = await runner.RunAsync(new NotebookCell(1, true, NotebookExercise.CodeOf(exercises, Border)));

        Assert.True(run.Failure is null, $"{notebook}: {run.Failure}");
        string[] shown = [.. string.Join('\n', run.Outputs.Select(output => output.Text)).Split(Border).Skip(1).Select(NotebookExercise.Words)];
        Assert.Equal(exercises.Count, shown.Length);
        foreach ((NotebookExercise exercise, string words) in exercises.Zip(shown))
        {
            Assert.NotEmpty(exercise.Settings);
            Assert.NotEmpty(exercise.Changed);
            Assert.All(exercise.Changed, figure => Assert.True(words.Contains(figure, StringComparison.Ordinal), $"{exercise} says {figure}; shown is {words}"));
        }
    }
}
