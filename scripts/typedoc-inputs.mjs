// Plugin of the reference: fields of an input that only a schema declares get a line that leads to the design's documentation, where
// meaning, unit and default stand once.
import { Comment, ReflectionKind } from 'typedoc';

export function load(app) {
  app.converter.on('resolveBegin', ({ project }) => {
    for (const reflection of project.getReflectionsByKind(ReflectionKind.Property)) {
      if (reflection.comment !== undefined) continue;
      const path = project.getSymbolIdFromReflection(reflection)?.packagePath ?? '';
      const ofSchema = /(^|\/)define\//.test(path);
      // Types that a schema infers have no symbol of their own everywhere.
      if (!ofSchema && !/\b(CollectorCandidate\.collector|StudyCase\.design)\b/.test(reflection.getFullName()))
        continue;
      const text =
        'As the field of this name in `SystemDesign`, where unit, range and default stand; a string may carry any unit.';
      reflection.comment = new Comment([{ kind: 'text', text }]);
    }
  });
}
