// FlowLayout: puts buttons side by side and begins a new line where the width ends, so that a
// narrow page needs no scrolling sideways.
#pragma once

#include <QLayout>

#include <vector>

namespace suppertide::ui {

class FlowLayout : public QLayout
{
    Q_OBJECT

public:
    explicit FlowLayout(QWidget* parent);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override { return minimumSize(); }
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect& area) override;
    [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }

private:
    enum class Carry
    {
        Measure,
        Place
    };
    int arrange(const QRect& area, Carry carry) const;

    std::vector<QLayoutItem*> items_; // owned, as every layout owns its items
};

} // namespace suppertide::ui
